// swift-tools-version:5.7
// Not compiled yet: no machine of ours has a Swift compiler.

import PackageDescription

let package = Package(
  name: "secundine-phone",
  platforms: [
    .macOS(.v10_15),
    .iOS(.v14),
  ],
  products: [
    .library(name: "secundine-phone", type: .static, targets: ["secundine-phone"])
  ],
  dependencies: [
    .package(name: "Tauri", path: "../.tauri/tauri-api")
  ],
  targets: [
    .target(
      name: "secundine-phone",
      dependencies: [.byName(name: "Tauri")],
      path: "Sources",
      // Of the program itself: the system finds its shortcuts there alone, and it marks through the core's own bindings.
      exclude: ["BabyBornIntent.swift"])
  ]
)
