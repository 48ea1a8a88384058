//! The one number that is read out of what a camera wrote beside a picture. Form: EXIF 2.32, which is a TIFF 6.0 file.

/// `Exif IFD Pointer` and `FocalLengthIn35mmFilm`.
const EXIF: u16 = 0x8769;
const FOCAL_IN_35_MM: u16 = 0xa405;

/// The focal length as on a film of 36 by 24 mm, in mm; none where it is not told, or told as unknown.
pub(super) fn focal_in_35_mm(exif: &[u8]) -> Option<u16> {
    let bytes = Tiff::new(exif)?;
    let further = bytes.field(bytes.u32(4)?, EXIF)?;
    let value = bytes.field(bytes.u32(further)?, FOCAL_IN_35_MM)?;
    bytes.u16(value).filter(|mm| (1..=1_000).contains(mm))
}

struct Tiff<'a> {
    bytes: &'a [u8],
    little: bool,
}

impl<'a> Tiff<'a> {
    fn new(bytes: &'a [u8]) -> Option<Self> {
        match bytes.get(..4)? {
            b"II*\0" => Some(Self { bytes, little: true }),
            b"MM\0*" => Some(Self { bytes, little: false }),
            _ => None,
        }
    }

    fn array<const N: usize>(&self, at: u32) -> Option<[u8; N]> {
        self.bytes.get(usize::try_from(at).ok()?..)?.first_chunk().copied()
    }

    fn u16(&self, at: u32) -> Option<u16> {
        self.array(at).map(|bytes| if self.little { u16::from_le_bytes(bytes) } else { u16::from_be_bytes(bytes) })
    }

    fn u32(&self, at: u32) -> Option<u32> {
        self.array(at).map(|bytes| if self.little { u32::from_le_bytes(bytes) } else { u32::from_be_bytes(bytes) })
    }

    /// Where the value of a field lies, in the table at this place: its count, then twelve bytes a field.
    fn field(&self, table: u32, tag: u16) -> Option<u32> {
        let fields = u32::from(self.u16(table)?);
        let mut places = (0..fields).map_while(|n| table.checked_add(2 + 12 * n));
        places.find(|at| self.u16(*at) == Some(tag))?.checked_add(8)
    }
}
