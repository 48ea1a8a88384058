import Foundation

/// What has to stand before the page is made. Called by `main.mm`, which Tauri gives; it has no delegate of ours.
@_cdecl("secundine_before_page")
public func beforePage() {
  KeptFiles.guardAll()
  PrivacyCover.shared.watch()
}
