#pragma once

// Tells the hand and the ear what happened on the walk, as far as its person wants to hear it.

#include <QObject>
#include <memory>

#include "mobile/feel/device.h"
#include "mobile/theme/tokens.h"

namespace kneerail::feel {

class Feel : public QObject {
  Q_OBJECT

 public:
  /// The tokens, which know whether there shall be sounds, outlive this.
  Feel(std::unique_ptr<Device> device, const Tokens& tokens, QObject* parent = nullptr);

  /// "kept", "far", "partDone", "postDone", "cannotWait", "notKept", "undone"; others are passed
  /// over.
  void felt(const QString& what);

 private:
  std::unique_ptr<Device> device_;
  const Tokens& tokens_;
};

}  // namespace kneerail::feel
