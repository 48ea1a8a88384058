// Takes a photograph that is never a file: the system's camera gives it in memory. Not compiled yet.

import UIKit

class Camera: NSObject, UIImagePickerControllerDelegate, UINavigationControllerDelegate {
  static var available: Bool { UIImagePickerController.isSourceTypeAvailable(.camera) }

  private let taken: (Data?) -> Void
  /// Of the JPEG. (ours)
  private let quality = 0.92

  init(taken: @escaping (Data?) -> Void) {
    self.taken = taken
  }

  func show(over: UIViewController) {
    let picker = UIImagePickerController()
    picker.sourceType = .camera
    picker.delegate = self
    over.present(picker, animated: true)
  }

  func imagePickerController(_ picker: UIImagePickerController, didFinishPickingMediaWithInfo info: [UIImagePickerController.InfoKey: Any]) {
    let image = info[.originalImage] as? UIImage
    picker.dismiss(animated: true)
    taken(image?.jpegData(compressionQuality: quality))
  }

  func imagePickerControllerDidCancel(_ picker: UIImagePickerController) {
    picker.dismiss(animated: true)
    taken(nil)
  }
}
