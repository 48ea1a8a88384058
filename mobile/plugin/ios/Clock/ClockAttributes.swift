// What the clock on the locked screen knows: when it began, and nothing else. The same file stands beside the widget and beside
// the plugin, which are programs of their own; a test holds them alike. Not compiled yet.

#if canImport(ActivityKit)
  import ActivityKit
  import Foundation

  @available(iOS 16.2, *)
  struct ClockAttributes: ActivityAttributes {
    struct ContentState: Codable, Hashable {
      var since: Date
    }
  }
#endif
