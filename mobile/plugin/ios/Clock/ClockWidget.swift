// The clock on the locked screen and in the island: the name of the program and the time, and no word more. Not compiled yet.

import ActivityKit
import SwiftUI
import WidgetKit

@main
@available(iOS 16.2, *)
struct ClockWidgets: WidgetBundle {
  var body: some Widget {
    ClockWidget()
  }
}

@available(iOS 16.2, *)
struct ClockWidget: Widget {
  var body: some WidgetConfiguration {
    ActivityConfiguration(for: ClockAttributes.self) { context in
      HStack {
        Text(verbatim: "Secundine")
        Spacer()
        Running(since: context.state.since).font(.title.monospacedDigit())
      }
      .padding()
    } dynamicIsland: { context in
      DynamicIsland {
        DynamicIslandExpandedRegion(.leading) { Text(verbatim: "Secundine") }
        DynamicIslandExpandedRegion(.trailing) { Running(since: context.state.since).font(.title2.monospacedDigit()) }
      } compactLeading: {
        Image(systemName: "timer")
      } compactTrailing: {
        Running(since: context.state.since).frame(maxWidth: 64)
      } minimal: {
        Image(systemName: "timer")
      }
    }
  }
}

@available(iOS 16.2, *)
struct Running: View {
  let since: Date

  var body: some View {
    Text(timerInterval: since...Date.distantFuture, countsDown: false).multilineTextAlignment(.trailing)
  }
}
