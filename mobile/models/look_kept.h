#pragma once

// How this screen looks and sounds, as its person chose it: dark or light, left or right hand, size
// of letters, more contrast, less motion, no sounds, how large the glass is. Remembered by this
// device, in no record.

#include <QObject>

#include "mobile/models/store_link.h"
#include "mobile/theme/tokens.h"

class LookKept : public QObject {
  Q_OBJECT

 public:
  /// Sets the tokens as they were left, and remembers each change from now on. Both outlive this.
  LookKept(StoreLink& store, Tokens& tokens, QObject* parent = nullptr);

 private:
  void restore();
  void keep();

  StoreLink& store_;
  Tokens& tokens_;
};
