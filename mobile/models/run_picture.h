#pragma once

// What the drawings show: one run as it stands, and what is chosen on it. A room's model fills it;
// elevation, run line and notes read it.

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <memory>
#include <vector>

#include "schema/store/run_store.h"

class RunPicture : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by a room's model")
  Q_PROPERTY(int posts READ posts NOTIFY changed)
  Q_PROPERTY(int post READ post NOTIFY chosenChanged)
  Q_PROPERTY(int part READ part NOTIFY chosenChanged)
  Q_PROPERTY(int bay READ bay NOTIFY chosenChanged)

 public:
  explicit RunPicture(QObject* parent = nullptr) : QObject(parent) {}

  /// Never null; empty before a run is opened. Shared, because the render thread may still draw the
  /// one before.
  [[nodiscard]] std::shared_ptr<const kneerail::RunSheet> sheet() const { return sheet_; }
  void show(std::shared_ptr<const kneerail::RunSheet> sheet);

  /// Places in the sheet; -1 for none. A chosen part's post is chosen too.
  [[nodiscard]] int post() const { return post_; }
  [[nodiscard]] int part() const { return part_; }
  [[nodiscard]] int bay() const { return bay_; }
  [[nodiscard]] int posts() const { return static_cast<int>(sheet_->posts.size()); }
  void choose_post(int post);
  void choose_part(int part);
  void choose_bay(int bay);
  /// The part, bay or post of that identifier. False: none of this run, and what was chosen stays.
  bool choose(const kneerail::Uuid& thing);

  /// Parts that somebody chose to be measured, places in the sheet, ascending.
  [[nodiscard]] const std::vector<int>& marked() const { return marked_; }
  void mark(std::vector<int> parts);

  /// While Undo or Redo is at it: what moves takes the way back, which is quicker.
  [[nodiscard]] bool taking_back() const { return taking_back_; }
  void set_taking_back(bool taking_back) { taking_back_ = taking_back; }

 signals:
  void changed();  ///< the sheet is another one
  void chosenChanged();
  void markedChanged();

 private:
  void choose(int post, int part, int bay);

  std::shared_ptr<const kneerail::RunSheet> sheet_ = std::make_shared<kneerail::RunSheet>();
  int post_ = -1;
  int part_ = -1;
  int bay_ = -1;
  std::vector<int> marked_;
  bool taking_back_ = false;
};
