import Foundation

/// What the system is told about the files of the practice: no copy of them goes into a backup of the phone, whose passphrase
/// is not hers; and which of them can be opened while the phone is locked.
///
/// The default of all files is `completeUnlessOpen` (an entitlement, see project.yml): a file that is open goes on being
/// written when the phone locks itself during a birth, and a new one can be made; a closed one cannot be opened. The locked
/// inbox has to be opened then, to mark "baby born" from the lock screen. It holds only what is sealed to a key that is not on
/// the phone in the clear, and so may be read from the first unlocking after a start.
enum KeptFiles {
  /// The folder that `paths` of src-tauri/src/lib.rs names, and the names that core/store/src/inbox.rs gives in it.
  private static let practice = "practice"
  private static let atAnyTime = ["inbox.recipient", "inbox"]

  /// Told at each start and each time the program is left, since the core makes the files in between.
  static func guardAll() {
    let files = FileManager.default
    guard let support = files.urls(for: .applicationSupportDirectory, in: .userDomainMask).first,
      let documents = files.urls(for: .documentDirectory, in: .userDomainMask).first
    else { return }
    for folder in [support, documents] {
      try? files.createDirectory(at: folder, withIntermediateDirectories: true)
      leaveOutOfBackup(folder)
    }
    let own = support.appendingPathComponent(Bundle.main.bundleIdentifier ?? "org.secundine.app")
    for name in atAnyTime {
      open(own.appendingPathComponent(practice).appendingPathComponent(name), files)
    }
  }

  /// What lies in an excluded folder is excluded with it, whenever it is made.
  private static func leaveOutOfBackup(_ folder: URL) {
    var folder = folder
    var values = URLResourceValues()
    values.isExcludedFromBackup = true
    try? folder.setResourceValues(values)
  }

  /// A folder's class is what new files in it get; what is in it already is told one by one.
  private static func open(_ url: URL, _ files: FileManager) {
    let inside = files.enumerator(at: url, includingPropertiesForKeys: nil)?.compactMap { $0 as? URL } ?? []
    for one in [url] + inside where files.fileExists(atPath: one.path) {
      try? files.setAttributes([.protectionKey: FileProtectionType.completeUntilFirstUserAuthentication], ofItemAtPath: one.path)
    }
  }
}
