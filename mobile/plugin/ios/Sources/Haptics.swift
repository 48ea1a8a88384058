// Vibrations as the page describes them: milliseconds on, off, on, and so on. Not compiled yet.

import CoreHaptics

class Haptics {
  private var engine: CHHapticEngine?
  /// Longer ones, or longer in all, are a mistake. (ours)
  private let longestMs = 5_000
  private let most = 20

  func play(_ pattern: [Int]) {
    let sound = !pattern.isEmpty && pattern.count <= most && pattern.allSatisfy { $0 >= 0 } && pattern.reduce(0, +) <= longestMs
    guard sound, CHHapticEngine.capabilitiesForHardware().supportsHaptics else { return }
    var events: [CHHapticEvent] = []
    var at = 0
    for (n, ms) in pattern.enumerated() {
      if n % 2 == 0, ms > 0 {
        let strong = CHHapticEventParameter(parameterID: .hapticIntensity, value: 1)
        events.append(
          CHHapticEvent(eventType: .hapticContinuous, parameters: [strong], relativeTime: Double(at) / 1000, duration: Double(ms) / 1000))
      }
      at += ms
    }
    guard !events.isEmpty else { return }
    do {
      let engine = try self.engine ?? CHHapticEngine()
      self.engine = engine
      try engine.start()
      try engine.makePlayer(with: CHHapticPattern(events: events, parameters: [])).start(atTime: 0)
    } catch {
      // A mark is shown and heard as well.
      self.engine = nil
    }
  }
}
