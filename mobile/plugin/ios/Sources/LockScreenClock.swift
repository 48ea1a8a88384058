// The running clock on the locked screen. The system draws it by itself, for eight hours at most. Not compiled yet.

import ActivityKit
import Foundation

struct ClockArgs: Decodable {
  let sinceMs: Int64?
}

@available(iOS 16.2, *)
enum LockScreenClock {
  /// One that began then, in place of another; none takes it away.
  static func show(since: Date?) async {
    guard let since = since, ActivityAuthorizationInfo().areActivitiesEnabled else {
      for one in Activity<ClockAttributes>.activities { await one.end(nil, dismissalPolicy: .immediate) }
      return
    }
    let content = ActivityContent(state: ClockAttributes.ContentState(since: since), staleDate: nil)
    if let one = Activity<ClockAttributes>.activities.first {
      await one.update(content)
    } else {
      // Where the system has no room for one, the page has the clock still.
      _ = try? Activity.request(attributes: ClockAttributes(), content: content)
    }
  }
}
