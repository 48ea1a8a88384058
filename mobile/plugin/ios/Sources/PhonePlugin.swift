// What only a phone can do, for the page; the last three for the core alone. Not compiled yet: no machine of ours has a Swift
// compiler. Each command is called by Rust, on a queue of Tauri's own.

import AVFoundation
import CoreHaptics
import Network
import Tauri
import UIKit
import UserNotifications
import WebKit

struct TellArgs: Decodable {
  let ask: Bool
}

struct OnArgs: Decodable {
  let on: Bool
}

struct BuzzArgs: Decodable {
  let pattern: [Int]
}

struct LanguageArgs: Decodable {
  let language: String
}

struct SpeakArgs: Decodable {
  let text: String
  let language: String
}

struct PathArgs: Decodable {
  let path: String
}

struct NameArgs: Decodable {
  let name: String
}

struct KeepArgs: Decodable {
  let name: String
  let secret: String
}

/// What the device tells of itself; what it cannot tell is left out.
struct Told: Encodable {
  var notifications: Bool?
  /// The system keeps the time of a notification by itself, to the second.
  var exact_reminders: Bool? = true
  var volume: Int?
  var battery: Int?
  var awake: Bool? = true
  var vibration: Bool?
  var metered: Bool?
}

class PhonePlugin: Plugin {
  private weak var page: WKWebView?
  private let haptics = Haptics()
  private let speech = Speech()
  private let reminders = Reminders()
  private let vault = Vault()
  private let line = NWPathMonitor()
  private var camera: Camera?

  override init() {
    super.init()
    line.start(queue: DispatchQueue(label: "org.secundine.line"))
  }

  @objc public override func load(webview: WKWebView) {
    page = webview
    speech.ended = { [weak self] in self?.tell(call: "ended") }
    tell(call: "ready")
  }

  /// Asked for before a birth, so that no question of the system comes in the middle of one.
  @objc public func tell(_ invoke: Invoke) throws {
    let ask = try invoke.parseArgs(TellArgs.self).ask
    reminders.permitted(ask: ask) { permitted in
      DispatchQueue.main.async {
        UIDevice.current.isBatteryMonitoringEnabled = true
        let battery = UIDevice.current.batteryLevel
        var told = Told()
        told.notifications = permitted
        told.volume = Int((AVAudioSession.sharedInstance().outputVolume * 100).rounded())
        told.battery = battery < 0 ? nil : Int((battery * 100).rounded())
        told.vibration = CHHapticEngine.capabilitiesForHardware().supportsHaptics
        told.metered = self.line.currentPath.isExpensive
        invoke.resolve(told)
      }
    }
  }

  @objc public func keepAwake(_ invoke: Invoke) throws {
    let on = try invoke.parseArgs(OnArgs.self).on
    DispatchQueue.main.async {
      UIApplication.shared.isIdleTimerDisabled = on
      invoke.resolve()
    }
  }

  @objc public func buzz(_ invoke: Invoke) throws {
    haptics.play(try invoke.parseArgs(BuzzArgs.self).pattern)
    invoke.resolve()
  }

  @objc public func voices(_ invoke: Invoke) throws {
    let language = try invoke.parseArgs(LanguageArgs.self).language
    invoke.resolve(["available": speech.voice(language) != nil])
  }

  @objc public func speak(_ invoke: Invoke) throws {
    let args = try invoke.parseArgs(SpeakArgs.self)
    if speech.speak(args.text, language: args.language) {
      invoke.resolve()
    } else {
      invoke.reject("no voice of this device speaks it", code: "cannot")
    }
  }

  @objc public func hush(_ invoke: Invoke) {
    speech.hush()
    invoke.resolve()
  }

  @objc public func remind(_ invoke: Invoke) throws {
    reminders.replace(with: try invoke.parseArgs(RemindArgs.self)) { invoke.resolve() }
  }

  @objc public func clock(_ invoke: Invoke) throws {
    let args = try invoke.parseArgs(ClockArgs.self)
    guard #available(iOS 16.2, *) else {
      invoke.reject("needs iOS 16.2", code: "cannot")
      return
    }
    Task {
      await LockScreenClock.show(since: args.sinceMs.map { Date(timeIntervalSinceNow: -Double($0) / 1000) })
      invoke.resolve()
    }
  }

  /// The rules of the App Store (2.5.9) leave the volume keys to the system.
  @objc public func volumeKeys(_ invoke: Invoke) {
    invoke.reject("the volume keys are the system's", code: "cannot")
  }

  /// Rust has seen to it that this file may leave.
  @objc public func share(_ invoke: Invoke) throws {
    let file = URL(fileURLWithPath: try invoke.parseArgs(PathArgs.self).path)
    DispatchQueue.main.async {
      guard let over = self.manager.viewController else {
        invoke.reject("no window", code: "failed")
        return
      }
      let sheet = UIActivityViewController(activityItems: [file], applicationActivities: nil)
      sheet.completionWithItemsHandler = { _, completed, _, _ in invoke.resolve(["given": completed]) }
      sheet.popoverPresentationController?.sourceView = over.view
      sheet.popoverPresentationController?.sourceRect = CGRect(x: over.view.bounds.midX, y: over.view.bounds.maxY, width: 0, height: 0)
      over.present(sheet, animated: true)
    }
  }

  @objc public func photograph(_ invoke: Invoke) {
    DispatchQueue.main.async {
      guard let over = self.manager.viewController, Camera.available else {
        invoke.reject("no camera", code: "cannot")
        return
      }
      let camera = Camera { jpeg in
        self.camera = nil
        invoke.resolve(Photograph(base64: jpeg?.base64EncodedString()))
      }
      self.camera = camera
      camera.show(over: over)
    }
  }

  @objc public func keepSecret(_ invoke: Invoke) throws {
    let args = try invoke.parseArgs(KeepArgs.self)
    vault.keep(args.name, secret: args.secret) { self.answer(invoke, $0) }
  }

  @objc public func fetchSecret(_ invoke: Invoke) throws {
    vault.fetch(try invoke.parseArgs(NameArgs.self).name) { self.answer(invoke, $0) }
  }

  @objc public func removeSecret(_ invoke: Invoke) throws {
    vault.remove(try invoke.parseArgs(NameArgs.self).name) { self.answer(invoke, $0) }
  }

  private func answer(_ invoke: Invoke, _ answer: Vault.Answer) {
    switch answer {
    case .done(let secret): invoke.resolve(Secret(secret: secret))
    case .not(let code, let message): invoke.reject(message, code: code)
    }
  }

  /// What the voice tells of itself, as an event of the page beside those that the page itself tells.
  private func tell(call: String) {
    DispatchQueue.main.async {
      self.page?.evaluateJavaScript("window.dispatchEvent(new CustomEvent('secundine-speech', { detail: { call: '\(call)' } }))")
    }
  }
}

struct Photograph: Encodable {
  let base64: String?
}

struct Secret: Encodable {
  let secret: String?
}

@_cdecl("init_plugin_phone")
func initPlugin() -> Plugin {
  return PhonePlugin()
}
