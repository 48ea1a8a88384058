//! The icons: each size that a system asks for, of the size that it says.

use std::path::{Path, PathBuf};

use image::GenericImageView;

use crate::files::root;

fn sides(path: &Path) -> (u32, u32) {
    image::open(path).unwrap_or_else(|error| panic!("{}: {error}", path.display())).dimensions()
}

#[test]
fn android_has_every_size_of_every_layer() {
    let resources = root().join("src-tauri/gen/android/app/src/main/res");
    // In dots of a screen of 160 to the inch: what is drawn whole, and the layers, of which a launcher shows the middle.
    for (density, dots) in [("mdpi", 1.0), ("hdpi", 1.5), ("xhdpi", 2.0), ("xxhdpi", 3.0), ("xxxhdpi", 4.0)] {
        for (name, side) in [("", 48.0), ("_round", 48.0), ("_foreground", 108.0), ("_background", 108.0), ("_monochrome", 108.0)]
        {
            let path = resources.join(format!("mipmap-{density}/ic_launcher{name}.png"));
            let (width, height) = sides(&path);
            // The tool that makes them rounds the smaller of them up by a point.
            assert!(width == height && (f64::from(width) - side * dots).abs() <= 1.0, "{}: {width} by {height}", path.display());
        }
    }
    let adaptive = std::fs::read_to_string(resources.join("mipmap-anydpi-v26/ic_launcher.xml")).unwrap();
    let adaptive = roxmltree::Document::parse(&adaptive).unwrap();
    for layer in ["foreground", "background", "monochrome"] {
        let layer = adaptive.descendants().find(|node| node.has_tag_name(layer)).unwrap();
        assert_eq!(
            layer.attribute(("http://schemas.android.com/apk/res/android", "drawable")).unwrap(),
            format!("@mipmap/ic_launcher_{}", layer.tag_name().name())
        );
    }
}

#[test]
fn ios_has_every_size_of_its_list() {
    let set = root().join("src-tauri/gen/apple/Assets.xcassets/AppIcon.appiconset");
    let list: serde_json::Value = serde_json::from_slice(&std::fs::read(set.join("Contents.json")).unwrap()).unwrap();
    let images = list["images"].as_array().unwrap();
    let mut named: Vec<PathBuf> = Vec::new();
    for image in images {
        let points: f64 = image["size"].as_str().unwrap().split('x').next().unwrap().parse().unwrap();
        let scale: f64 = image["scale"].as_str().unwrap().trim_end_matches('x').parse().unwrap();
        let path = set.join(image["filename"].as_str().unwrap());
        let picture = image::open(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        let (width, height) = picture.dimensions();
        assert!(width == height && (f64::from(width) - points * scale).abs() < 0.5, "{}: {width} by {height}", path.display());
        // A store refuses an icon that shows what lies under it.
        assert!(picture.pixels().all(|(_, _, dot)| dot.0[3] == 255), "{}: not opaque", path.display());
        named.push(path);
    }
    assert!(images.iter().any(|image| image["idiom"] == "ios-marketing"));
    for file in std::fs::read_dir(&set).unwrap().map(|entry| entry.unwrap().path()) {
        assert!(file.ends_with("Contents.json") || named.contains(&file), "{} is in no list", file.display());
    }
}
