// The time reminders that come with the program dead. The system keeps them, also over a restart: what it is given has no name
// and no word of what they are of. Not compiled yet.

import Foundation
import UserNotifications

struct ComingArgs: Decodable {
  let inMs: Double
  let level: String
}

struct Words: Decodable {
  let reminder: String
}

struct RemindArgs: Decodable {
  let group: String?
  let coming: [ComingArgs]
  let words: Words
}

class Reminders {
  private let center = UNUserNotificationCenter.current()
  /// The core arms three of a birth; more than so many of one group are a mistake. (ours)
  private let most = 8
  private let queue = DispatchQueue(label: "org.secundine.reminders")

  func permitted(ask: Bool, _ told: @escaping (Bool?) -> Void) {
    center.getNotificationSettings { settings in
      switch settings.authorizationStatus {
      case .authorized, .provisional, .ephemeral: told(true)
      case .notDetermined where ask:
        self.center.requestAuthorization(options: [.alert, .sound]) { granted, _ in told(granted) }
      default: told(false)
      }
    }
  }

  /// The whole list of a group is replaced; without a group, that of all. One at a time, so that no older list comes last.
  func replace(with args: RemindArgs, done: @escaping () -> Void) {
    queue.async {
      let turn = DispatchSemaphore(value: 0)
      self.center.getPendingNotificationRequests { pending in
        let prefix = args.group.map { "reminder/\($0)/" } ?? "reminder/"
        self.center.removePendingNotificationRequests(withIdentifiers: pending.map(\.identifier).filter { $0.hasPrefix(prefix) })
        if args.group != nil {
          let coming = args.coming.filter { $0.inMs > 0 }.sorted { $0.inMs < $1.inMs }.prefix(self.most)
          for (n, one) in coming.enumerated() { self.center.add(self.request("\(prefix)\(n)", one, args.words)) }
        }
        turn.signal()
        done()
      }
      turn.wait()
    }
  }

  private func request(_ name: String, _ one: ComingArgs, _ words: Words) -> UNNotificationRequest {
    let content = UNMutableNotificationContent()
    content.title = "Secundine"
    content.body = words.reminder
    content.sound = .default
    if #available(iOS 15.0, *) { content.interruptionLevel = one.level == "note" ? .active : .timeSensitive }
    // A second at least: the system takes no less.
    let trigger = UNTimeIntervalNotificationTrigger(timeInterval: max(1, one.inMs / 1000), repeats: false)
    return UNNotificationRequest(identifier: name, content: content, trigger: trigger)
  }
}
