// Speaks with the voices of the device, which all lie on it. Not compiled yet.

import AVFoundation

class Speech: NSObject, AVSpeechSynthesizerDelegate {
  private let synthesizer = AVSpeechSynthesizer()
  var ended: (() -> Void)?

  override init() {
    super.init()
    synthesizer.delegate = self
  }

  /// A voice for a BCP 47 tag.
  func voice(_ language: String) -> AVSpeechSynthesisVoice? {
    let short = language.split(separator: "-").first.map(String.init) ?? language
    return AVSpeechSynthesisVoice(language: language)
      ?? AVSpeechSynthesisVoice.speechVoices().first { $0.language.split(separator: "-").first.map(String.init) == short }
  }

  func speak(_ text: String, language: String) -> Bool {
    guard let voice = voice(language) else { return false }
    let utterance = AVSpeechUtterance(string: text)
    utterance.voice = voice
    synthesizer.speak(utterance)
    return true
  }

  func hush() {
    synthesizer.stopSpeaking(at: .immediate)
  }

  func speechSynthesizer(_ synthesizer: AVSpeechSynthesizer, didFinish utterance: AVSpeechUtterance) {
    ended?()
  }
}
