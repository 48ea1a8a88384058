// Written without a compiler at hand: neither compiled nor run anywhere yet.
//
// "Baby born" for Siri, Shortcuts, the action button and Back Tap: one word or press marks it, on a locked phone too, without
// the page. It belongs to the target of the program itself, since the system reads intents out of that one, and so that it
// runs in the program's process and asks the one session there. What it answers is a time, never a name: it may be shown and
// spoken on a locked phone.
//
// On a locked phone only files of the class completeUntilFirstUserAuthentication can be read. What the inbox needs is of that
// class (see `open(practice:)`): the plain recipient, which is no secret; the folder of the inbox, whose files nobody can
// read without the practice's key; and the name of this run of the phone. The database and its keys stay
// completeUnlessOpen.

import AppIntents
import Foundation

@available(iOS 16.0, *)
struct BabyBornIntent: AppIntent {
    static let title: LocalizedStringResource = "Baby born"
    static let description = IntentDescription("Marks the time of the birth. It needs no passphrase.")
    static let openAppWhenRun = false
    static let authenticationPolicy: IntentAuthenticationPolicy = .alwaysAllowed

    func perform() async throws -> some IntentResult & ProvidesDialog {
        let touched = ContinuousClock.now
        let language = Locale.preferredLanguages.first ?? "en"
        let practice = BabyBornIntent.practice()
        BabyBornIntent.open(practice: practice)
        let core = Secundine.beside(data: practice.path)
        do {
            let waited = ContinuousClock.now - touched
            let ago = UInt32(clamping: waited.components.seconds * 1_000 + waited.components.attoseconds / 1_000_000_000_000_000)
            let marked = try core.markBabyBorn(agoMs: ago, language: language)
            return .result(dialog: "\(marked.words)")
        } catch MarkError.NotSaved(let why) {
            // An error of an intent is told by the system in its own way; this has to be told in these words.
            return .result(dialog: "\(markWords(language: language).notSaved). \(why)")
        }
    }

    /// Where the shell keeps the practice: src-tauri/src/lib.rs.
    static func practice() -> URL {
        let support = FileManager.default.urls(for: .applicationSupportDirectory, in: .userDomainMask)[0]
        return support.appendingPathComponent("org.secundine.app/practice", isDirectory: true)
    }

    /// Lets a mark be written while the phone is locked. The shell calls it too, as the program comes up and goes to the
    /// background: files that were written meanwhile have the stricter class.
    static func open(practice: URL) {
        let files = FileManager.default
        let inbox = practice.appendingPathComponent("inbox", isDirectory: true)
        let waiting = (try? files.contentsOfDirectory(at: inbox, includingPropertiesForKeys: nil)) ?? []
        let needed = ["inbox.recipient", "run"].map { practice.appendingPathComponent($0) } + [inbox] + waiting
        for file in needed {
            // What cannot be set now, on a locked phone, was set before, or the mark says that it is NOT saved.
            try? files.setAttributes([.protectionKey: FileProtectionType.completeUntilFirstUserAuthentication], ofItemAtPath: file.path)
        }
    }
}

@available(iOS 16.0, *)
struct TakeBackIntent: AppIntent {
    static let title: LocalizedStringResource = "Take the mark back"
    static let openAppWhenRun = false
    static let authenticationPolicy: IntentAuthenticationPolicy = .alwaysAllowed

    func perform() async throws -> some IntentResult & ProvidesDialog {
        let language = Locale.preferredLanguages.first ?? "en"
        do {
            try Secundine.beside(data: BabyBornIntent.practice().path).takeBackMark(language: language)
            return .result(dialog: "\(markWords(language: language).takenBack)")
        } catch MarkError.Stands(let why) {
            return .result(dialog: "\(why)")
        }
    }
}

@available(iOS 16.0, *)
struct SecundineShortcuts: AppShortcutsProvider {
    static var appShortcuts: [AppShortcut] {
        AppShortcut(intent: BabyBornIntent(), phrases: ["Baby born in \(.applicationName)"], shortTitle: "Baby born", systemImageName: "clock")
    }
}
