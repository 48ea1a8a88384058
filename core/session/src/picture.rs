//! A photograph as it is kept: upright, and without anything that the camera wrote into it, above all where it was taken.
//!
//! It is decoded and encoded anew, so that what is not a pixel or its colour cannot come along. The focal length is read
//! before that, since a measure on the picture may need it.

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::metadata::Orientation;
use image::{DynamicImage, ExtendedColorType, ImageDecoder, ImageEncoder, ImageFormat, ImageReader};

mod exif;

/// Most pixels of a picture. Our own choice: phones make 12 million, and memory has to hold it twice.
pub const PIXELS_MAX: u64 = 50_000_000;
/// Quality of the picture that is kept, out of 100. Our own choice: an edge stays where it was.
const QUALITY: u8 = 92;
/// The longer side of the small picture, pixels. Our own choice: a list on a phone, and a print 4 cm wide.
const SMALL: u32 = 480;
/// Its quality.
const SMALL_QUALITY: u8 = 80;

/// A photograph as it is kept.
pub struct Picture {
    /// JPEG.
    pub file: Vec<u8>,
    /// The same, small: JPEG.
    pub small: Vec<u8>,
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
    /// The lens's focal length, in pixels of this picture, where the camera told of it.
    pub focal: Option<u32>,
}

/// Why a file is not taken for a photograph.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoPicture {
    /// Neither JPEG nor PNG, or not whole.
    Unreadable,
    /// More than [`PIXELS_MAX`].
    TooLarge,
}

/// Takes a JPEG or PNG file for a photograph.
///
/// # Errors
/// [`NoPicture`] says why not.
pub fn take(bytes: &[u8]) -> Result<Picture, NoPicture> {
    let (image, exif, colours) = upright(bytes)?;
    let (width, height) = (image.width(), image.height());
    let focal = exif.as_deref().and_then(exif::focal_in_35_mm).map(|mm| focal_pixels(mm, width, height));
    let small = image.thumbnail(SMALL, SMALL);
    let file = jpeg(image, QUALITY, colours.as_deref())?;
    Ok(Picture { file, small: jpeg(small, SMALL_QUALITY, colours.as_deref())?, width, height, focal })
}

/// The pixels, turned as the camera was held; what it wrote beside them (EXIF); and what its colours are (ICC).
///
/// # Errors
/// As for [`take`].
pub fn upright(bytes: &[u8]) -> Result<(DynamicImage, Option<Vec<u8>>, Option<Vec<u8>>), NoPicture> {
    let unreadable = |_| NoPicture::Unreadable;
    let format = image::guess_format(bytes).map_err(unreadable)?;
    if !matches!(format, ImageFormat::Jpeg | ImageFormat::Png) {
        return Err(NoPicture::Unreadable);
    }
    let reader = ImageReader::with_format(Cursor::new(bytes), format);
    let mut decoder = reader.into_decoder().map_err(unreadable)?;
    let (width, height) = decoder.dimensions();
    if u64::from(width) * u64::from(height) > PIXELS_MAX {
        return Err(NoPicture::TooLarge);
    }
    // What is beside the pixels may be damaged and the picture good.
    let orientation = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    let (exif, colours) = (decoder.exif_metadata().unwrap_or_default(), decoder.icc_profile().unwrap_or_default());
    let mut image = DynamicImage::ImageRgb8(DynamicImage::from_decoder(decoder).map_err(unreadable)?.into_rgb8());
    image.apply_orientation(orientation);
    Ok((image, exif, colours))
}

fn jpeg(image: DynamicImage, quality: u8, colours: Option<&[u8]>) -> Result<Vec<u8>, NoPicture> {
    let mut file = Vec::new();
    let mut encoder = JpegEncoder::new_with_quality(&mut file, quality);
    if let Some(colours) = colours {
        // Colours that cannot be told are those of a common screen.
        let _ = encoder.set_icc_profile(colours.to_vec());
    }
    let (width, height) = (image.width(), image.height());
    encoder.write_image(image.as_bytes(), width, height, ExtendedColorType::Rgb8).map_err(|_| NoPicture::Unreadable)?;
    Ok(file)
}

/// A focal length told for a film of 36 by 24 mm, in pixels: the diagonals stand for each other (CIPA DCG-001).
fn focal_pixels(mm: u16, width: u32, height: u32) -> u32 {
    let diagonal = f64::from(width).hypot(f64::from(height));
    // Between 1 and a hundred thousand: neither number is far from what a lens has.
    (f64::from(mm) / 36_f64.hypot(24.0) * diagonal).round() as u32
}

#[cfg(test)]
mod tests;
