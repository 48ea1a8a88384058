use image::{Rgb, RgbImage};

use super::*;

/// Red at the left, blue at the right, with a green band above.
fn scene(width: u32, height: u32) -> RgbImage {
    RgbImage::from_fn(width, height, |x, y| match (y < height / 4, x < width / 2) {
        (true, _) => Rgb([20, 200, 20]),
        (false, true) => Rgb([200, 20, 20]),
        (false, false) => Rgb([20, 20, 200]),
    })
}

fn encoded(image: &RgbImage, exif: Option<Vec<u8>>) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = JpegEncoder::new_with_quality(&mut bytes, 95);
    if let Some(exif) = exif {
        encoder.set_exif_metadata(exif).unwrap();
    }
    encoder.write_image(image.as_raw(), image.width(), image.height(), ExtendedColorType::Rgb8).unwrap();
    bytes
}

/// What a camera writes: how it was held, its lens, and words that stand for the place.
fn exif(little: bool, orientation: u16, focal: u16) -> Vec<u8> {
    let two = |n: u16| if little { n.to_le_bytes() } else { n.to_be_bytes() };
    let four = |n: u32| if little { n.to_le_bytes() } else { n.to_be_bytes() };
    let short = |tag: u16, value: u16| [&two(tag)[..], &two(3), &four(1), &two(value), &[0, 0]].concat();
    let long = |tag: u16, value: u32| [&two(tag)[..], &two(4), &four(1), &four(value)].concat();
    let head = [if little { &b"II"[..] } else { b"MM" }, &two(42), &four(8)].concat();
    let first = [two(2).to_vec(), short(0x0112, orientation), long(EXIF_POINTER, 38), four(0).to_vec()].concat();
    let second = [two(1).to_vec(), short(0xa405, focal), four(0).to_vec()].concat();
    [head, first, second, b"GPS canary 52.3702N 4.8952E".to_vec()].concat()
}

const EXIF_POINTER: u16 = 0x8769;

fn read(bytes: &[u8]) -> RgbImage {
    image::load_from_memory_with_format(bytes, ImageFormat::Jpeg).unwrap().into_rgb8()
}

fn near(pixel: &Rgb<u8>, wanted: [u8; 3]) -> bool {
    pixel.0.iter().zip(wanted).all(|(is, wanted)| is.abs_diff(wanted) < 40)
}

#[test]
fn a_picture_is_turned_upright_and_keeps_nothing_but_its_pixels() {
    // As the camera stored it when it was held a quarter turn: 6 is "turn it clockwise by a quarter".
    for (orientation, turned) in [(1, scene(80, 60)), (3, image::imageops::rotate180(&scene(80, 60)))] {
        check(&encoded(&turned, Some(exif(true, orientation, 26))), 80, 60);
    }
    for (orientation, turned) in [(6, image::imageops::rotate270(&scene(60, 80))), (8, image::imageops::rotate90(&scene(60, 80)))]
    {
        check(&encoded(&turned, Some(exif(false, orientation, 26))), 60, 80);
    }
}

fn check(bytes: &[u8], width: u32, height: u32) {
    let holds = |bytes: &[u8], part: &[u8]| bytes.windows(part.len()).any(|window| window == part);
    assert!(holds(bytes, b"GPS canary"), "the search finds what is there");
    let picture = take(bytes).unwrap();
    assert_eq!((picture.width, picture.height), (width, height));
    // 26 mm on a diagonal of 43.27 mm; here it is 100 pixels.
    assert_eq!(picture.focal, Some(60));
    for kept in [&picture.file, &picture.small] {
        assert!(!holds(kept, b"GPS canary") && !holds(kept, b"Exif"));
        let image = read(kept);
        let at = |x: u32, y: u32| image.get_pixel(image.width() * x / 8, image.height() * y / 8);
        assert!(near(at(4, 1), [20, 200, 20]) && near(at(1, 5), [200, 20, 20]) && near(at(7, 5), [20, 20, 200]));
    }
}

#[test]
fn the_small_picture_is_small() {
    let picture = take(&encoded(&scene(2_000, 1_500), None)).unwrap();
    let small = read(&picture.small);
    assert_eq!((small.width(), small.height(), picture.focal), (480, 360, None));
    assert!(picture.small.len() < picture.file.len() / 4);
}

#[test]
fn a_png_is_a_picture_too() {
    let mut bytes = Vec::new();
    scene(40, 30).write_to(&mut Cursor::new(&mut bytes), ImageFormat::Png).unwrap();
    let picture = take(&bytes).unwrap();
    assert_eq!((picture.width, picture.height), (40, 30));
    assert!(near(read(&picture.file).get_pixel(5, 20), [200, 20, 20]));
}

#[test]
fn what_is_no_picture_is_refused_and_no_bytes_make_it_stop() {
    let whole = encoded(&scene(64, 48), Some(exif(true, 1, 26)));
    for bad in [&b""[..], b"GIF89a", b"%PDF-1.7", b"\xff\xd8\xff", &[0; 4096], &whole[..40]] {
        assert_eq!(take(bad).err(), Some(NoPicture::Unreadable), "{bad:?}");
    }
    for at in (0..whole.len()).step_by(7) {
        let mut other = whole.clone();
        other[at] ^= 0x5a;
        let _ = take(&other);
        let _ = take(&whole[..at]);
    }
}

#[test]
fn too_many_pixels_are_refused_before_there_is_memory_for_them() {
    let mut bytes = encoded(&scene(64, 48), None);
    // Height and width in the start of the frame.
    let frame = bytes.windows(2).position(|pair| pair == [0xff, 0xc0]).unwrap();
    bytes[frame + 5..frame + 9].copy_from_slice(&[0xff, 0x00, 0xff, 0x00]);
    assert_eq!(take(&bytes).err(), Some(NoPicture::TooLarge));
}

#[test]
fn the_focal_length_is_read_or_there_is_none() {
    let picture = |little, focal| take(&encoded(&scene(400, 300), Some(exif(little, 1, focal)))).unwrap().focal;
    assert_eq!(picture(true, 26), Some(300));
    assert_eq!(picture(false, 52), Some(601));
    assert_eq!(picture(true, 0), None);
    assert_eq!(picture(true, 9_999), None);
    let whole = exif(true, 1, 26);
    for cut in 0..50 {
        assert_eq!(super::exif::focal_in_35_mm(&whole[..cut]), None, "{cut}");
    }
}
