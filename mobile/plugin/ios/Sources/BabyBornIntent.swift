// Written without a compiler at hand: neither compiled nor run anywhere yet.
//
// "Baby born" for Siri, Shortcuts, the action button and Back Tap: one word or press marks it, on a locked phone too, without
// the page. It belongs to the target of the program itself, since the system reads intents out of that one, and so that it
// runs in the program's process and asks the one session there. What it answers is a time, never a name: it may be shown and
// spoken on a locked phone.
//
// What it needs of the practice's files while the phone is locked is opened by KeptFiles.swift of src-tauri/gen/apple; the database
// and its keys stay completeUnlessOpen.

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
        KeptFiles.openInbox()
        let core = Secundine.beside(data: KeptFiles.practice.path)
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
}

@available(iOS 16.0, *)
struct TakeBackIntent: AppIntent {
    static let title: LocalizedStringResource = "Take the mark back"
    static let openAppWhenRun = false
    static let authenticationPolicy: IntentAuthenticationPolicy = .alwaysAllowed

    func perform() async throws -> some IntentResult & ProvidesDialog {
        let language = Locale.preferredLanguages.first ?? "en"
        do {
            try Secundine.beside(data: KeptFiles.practice.path).takeBackMark(language: language)
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
