import Foundation

/// What the system is told about the files of the practice: no copy of them goes into a backup of the phone, whose passphrase
/// is not hers; and which of them can be opened while the phone is locked.
///
/// The default of all files is `completeUnlessOpen` (an entitlement, see project.yml): a file that is open goes on being
/// written when the phone locks itself during a birth, and a new one can be made; a closed one cannot be opened. The locked
/// inbox has to be opened then, to mark "baby born" from the lock screen. It holds only what is sealed to a key that is not on
/// the phone in the clear; with it go the plain recipient and the name of this run of the phone, which are no secrets. These may
/// be read from the first unlocking after a start.
enum KeptFiles {
  /// The names that the core gives in the folder of the practice: core/store/src/inbox.rs and core/session/src/clock.
  private static let atAnyTime = ["inbox.recipient", "inbox", "run"]

  /// The folder that `paths` of src-tauri/src/lib.rs names.
  static var practice: URL {
    let support = FileManager.default.urls(for: .applicationSupportDirectory, in: .userDomainMask)[0]
    return support.appendingPathComponent(Bundle.main.bundleIdentifier ?? "org.secundine.app").appendingPathComponent("practice")
  }

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
    openInbox()
  }

  /// Lets a mark be written while the phone is locked. What cannot be set now, on a locked phone, was set before, or the mark says
  /// that it is NOT saved.
  static func openInbox() {
    for name in atAnyTime {
      open(practice.appendingPathComponent(name), FileManager.default)
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
