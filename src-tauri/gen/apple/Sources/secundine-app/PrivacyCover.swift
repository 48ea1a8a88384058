import UIKit

/// Lies over the page while another program, the switcher or a question of the system is in front, so that the picture which
/// iOS keeps of the program shows nothing of a birth. Against a screenshot that she takes herself iOS has no means.
final class PrivacyCover {
  static let shared = PrivacyCover()

  /// Of the same dark as the start, with nothing on it.
  private static let night = UIColor(red: 0.169, green: 0.082, blue: 0.071, alpha: 1)
  private var covers: [UIWindow] = []

  func watch() {
    let center = NotificationCenter.default
    center.addObserver(forName: UIApplication.willResignActiveNotification, object: nil, queue: .main) { _ in
      self.cover()
      KeptFiles.guardAll()
    }
    center.addObserver(forName: UIApplication.didBecomeActiveNotification, object: nil, queue: .main) { _ in
      self.covers.forEach { $0.isHidden = true }
      self.covers = []
    }
  }

  /// A window above all others of its scene: the page keeps its own, with what was typed and where it was scrolled.
  private func cover() {
    guard covers.isEmpty else { return }
    covers = UIApplication.shared.connectedScenes.compactMap { $0 as? UIWindowScene }.map { scene in
      let window = UIWindow(windowScene: scene)
      window.windowLevel = .alert + 1
      window.rootViewController = UIViewController()
      window.rootViewController?.view.backgroundColor = Self.night
      window.isHidden = false
      return window
    }
  }
}
