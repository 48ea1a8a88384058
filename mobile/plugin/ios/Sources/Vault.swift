// Secrets in the keychain, which the Secure Enclave gives only to a finger or a face that was known when they were kept. They
// stay on this device: in no backup, and in no other keychain of the same person. Not compiled yet.

import Foundation
import LocalAuthentication
import Security

class Vault {
  enum Answer {
    case done(String?)
    case not(code: String, message: String)
  }

  private let service = "org.secundine.app.keys"
  /// The system waits for the person on whatever calls it: not on the queue of all other commands.
  private let queue = DispatchQueue(label: "org.secundine.vault")

  func keep(_ name: String, secret: String, _ answer: @escaping (Answer) -> Void) {
    queue.async {
      var error: Unmanaged<CFError>?
      // No passcode on the device, or a new finger: then it is gone.
      guard
        let access = SecAccessControlCreateWithFlags(nil, kSecAttrAccessibleWhenPasscodeSetThisDeviceOnly, .biometryCurrentSet, &error)
      else {
        answer(.not(code: "failed", message: "\(String(describing: error?.takeRetainedValue()))"))
        return
      }
      SecItemDelete(self.item(name) as CFDictionary)
      var new = self.item(name)
      new[kSecAttrAccessControl as String] = access
      new[kSecValueData as String] = Data(secret.utf8)
      answer(self.told(SecItemAdd(new as CFDictionary, nil)))
    }
  }

  func fetch(_ name: String, _ answer: @escaping (Answer) -> Void) {
    queue.async {
      let context = LAContext()
      context.localizedReason = "Secundine"
      var wanted = self.item(name)
      wanted[kSecReturnData as String] = true
      wanted[kSecUseAuthenticationContext as String] = context
      var found: CFTypeRef?
      let status = SecItemCopyMatching(wanted as CFDictionary, &found)
      if status == errSecSuccess, let data = found as? Data {
        answer(.done(String(decoding: data, as: UTF8.self)))
      } else {
        answer(self.told(status))
      }
    }
  }

  func remove(_ name: String, _ answer: @escaping (Answer) -> Void) {
    queue.async { answer(self.told(SecItemDelete(self.item(name) as CFDictionary))) }
  }

  private func item(_ name: String) -> [String: Any] {
    [
      kSecClass as String: kSecClassGenericPassword,
      kSecAttrService as String: service,
      kSecAttrAccount as String: name,
    ]
  }

  private func told(_ status: OSStatus) -> Answer {
    switch status {
    case errSecSuccess: return .done(nil)
    case errSecItemNotFound: return .not(code: "not-there", message: "")
    case errSecUserCanceled, errSecAuthFailed: return .not(code: "refused", message: "")
    default: return .not(code: "failed", message: "keychain \(status)")
    }
  }
}
