#pragma once

// ElevationItem: a run drawn to scale, panned, pinched and touched. It shows what `picture` holds
// and chooses nothing itself: a touch is a signal, and what the model then chooses is what the
// drawing glides to. Colours, sizes and times come from Tokens. In QML it is used as ElevationView
// (ElevationView.qml), which adds what a screen reader finds on it.

#include <QtQml/qqmlregistration.h>
#include <QPointer>
#include <QRectF>
#include <QTimer>
#include <QVariantAnimation>
#include <functional>
#include <memory>
#include <optional>

#include "mobile/elevation/drawing_item.h"
#include "mobile/elevation/picking.h"
#include "mobile/elevation/ring_fill.h"
#include "mobile/elevation/run_scene.h"
#include "mobile/elevation/run_view.h"
#include "mobile/elevation/touch_filter.h"
#include "mobile/elevation/visible_parts.h"
#include "mobile/models/run_picture.h"

class ElevationItem : public DrawingItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(RunPicture* picture READ picture WRITE set_picture NOTIFY pictureChanged)
  /// 25 is 1:25. Set by the rule of scale_steps.h when another run is shown, then by the hand.
  Q_PROPERTY(qreal scaleDenominator READ scale_denominator WRITE set_scale_denominator NOTIFY
                 scaleDenominatorChanged)
  /// Millimetres along the run in the middle of the item, and at its edges.
  Q_PROPERTY(qreal centreChainage READ centre_chainage WRITE set_centre_chainage NOTIFY viewChanged)
  Q_PROPERTY(qreal leftChainage READ left_chainage NOTIFY viewChanged)
  Q_PROPERTY(qreal rightChainage READ right_chainage NOTIFY viewChanged)
  /// From the item's foot up to the deck's line, px.
  Q_PROPERTY(qreal deckMargin READ deck_margin WRITE set_deck_margin NOTIFY deckMarginChanged)
  /// The hand that holds the pad: what is drawn larger stands a little to the other side of it.
  Q_PROPERTY(Qt::Edge thumbSide READ thumb_side WRITE set_thumb_side NOTIFY thumbSideChanged)
  /// Posts bear their tags: false in a small piece, where there is no room over the rail.
  Q_PROPERTY(bool tagged READ tagged WRITE set_tagged NOTIFY taggedChanged)
  /// Where the run's beginning on the deck is drawn: the origin of the rectangles of visibleParts.
  Q_PROPERTY(qreal contentX READ content_x NOTIFY viewChanged)
  Q_PROPERTY(qreal contentY READ content_y NOTIFY viewChanged)
  Q_PROPERTY(VisibleParts* visibleParts READ visible_parts CONSTANT)
  /// What is chosen, in the item's pixels: its brackets, and where the leader of a note ends.
  Q_PROPERTY(bool hasChosen READ has_chosen NOTIFY chosenMoved)
  Q_PROPERTY(QRectF chosenRect READ chosen_rect NOTIFY chosenMoved)
  Q_PROPERTY(QPointF chosenPoint READ chosen_point NOTIFY chosenMoved)
  /// Of a usual bay, px.
  Q_PROPERTY(qreal bayWidth READ bay_width NOTIFY scaleTextChanged)
  /// "about 1:25", and "1:25" once the glass was measured: where there is little room.
  Q_PROPERTY(QString shortScaleText READ short_scale_text NOTIFY scaleTextChanged)
  /// "seen from the sea, about 1:25".
  Q_PROPERTY(QString scaleText READ scale_text NOTIFY scaleTextChanged)
  /// How high water stood, for a screen reader; empty: no mark of it is on record.
  Q_PROPERTY(QString waterWords READ water_words NOTIFY scaleTextChanged)
  /// A crowded joint is drawn at 1:10 in place, for the second touch.
  Q_PROPERTY(bool jointEnlarged READ joint_enlarged NOTIFY jointEnlargedChanged)
  Q_PROPERTY(bool moving READ moving NOTIFY movingChanged)

 public:
  explicit ElevationItem(QQuickItem* parent = nullptr);
  ~ElevationItem() override;

  [[nodiscard]] RunPicture* picture() const { return picture_; }
  void set_picture(RunPicture* picture);
  [[nodiscard]] qreal scale_denominator() const { return view_.denominator; }
  void set_scale_denominator(qreal denominator);
  [[nodiscard]] qreal centre_chainage() const { return view_.centre_mm; }
  void set_centre_chainage(qreal chainage_mm);
  [[nodiscard]] qreal left_chainage() const { return view_.left_mm(); }
  [[nodiscard]] qreal right_chainage() const { return view_.right_mm(); }
  [[nodiscard]] qreal deck_margin() const;
  void set_deck_margin(qreal margin_px);
  [[nodiscard]] Qt::Edge thumb_side() const { return thumb_side_; }
  void set_thumb_side(Qt::Edge side);
  [[nodiscard]] bool tagged() const { return tagged_; }
  void set_tagged(bool tagged);
  [[nodiscard]] qreal content_x() const { return view_.x_px(0); }
  [[nodiscard]] qreal content_y() const { return view_.deck_px; }
  [[nodiscard]] VisibleParts* visible_parts() { return &visible_parts_; }
  [[nodiscard]] bool has_chosen() const { return brackets_.has_value(); }
  [[nodiscard]] QRectF chosen_rect() const;
  [[nodiscard]] QPointF chosen_point() const;
  [[nodiscard]] QString scale_text() const;
  [[nodiscard]] QString short_scale_text() const;
  [[nodiscard]] QString water_words() const;
  [[nodiscard]] qreal bay_width() const;
  [[nodiscard]] bool joint_enlarged() const { return lens_.has_value(); }
  [[nodiscard]] bool moving() const;
  [[nodiscard]] const kneerail::elevation::RunView& view() const { return view_; }

  /// The next step of the scale, about the middle: +1 shows more of the run.
  Q_INVOKABLE void stepScale(int direction);
  /// Takes the joint that is drawn larger away.
  Q_INVOKABLE void closeJoint();
  /// Where a place of the run is drawn in the joint that is drawn larger, in the item's pixels.
  Q_INVOKABLE [[nodiscard]] QPointF enlargedPlace(qreal along_mm, qreal up_mm) const;

  /// Tests hand in the time of touches; otherwise it is the event's own.
  void use_clock(std::function<std::int64_t()> now_ms) { now_ms_ = std::move(now_ms); }
  /// How many rings fill or empty now.
  [[nodiscard]] std::size_t rings_filling() const { return rings_.rings.size(); }
  /// How many stretches were made into shapes.
  [[nodiscard]] std::uint64_t stretches_made() const { return scene_.chunks_made(); }

 signals:
  void pictureChanged();
  void scaleDenominatorChanged();
  void viewChanged();
  void scaleTextChanged();
  void deckMarginChanged();
  void thumbSideChanged();
  void taggedChanged();
  void chosenMoved();
  void jointEnlargedChanged();
  void movingChanged();

  void partTouched(int part);
  void postTouched(int post);
  void bayTouched(int bay, qreal alongMm, qreal upMm);  ///< and where on the run
  void partHeld(int part);
  void swiped(int direction);  ///< +1: to the next post; a swipe, or Page Down
  void palmSeen();             ///< rain or a palm: the pad rests 400 ms

 protected:
  void componentComplete() override;
  QSGNode* updatePaintNode(QSGNode* old, UpdatePaintNodeData* data) override;
  void geometryChange(const QRectF& now, const QRectF& before) override;
  void tokens_changed(bool sizes) override;
  void touchEvent(QTouchEvent* event) override;
  void touchUngrabEvent() override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseUngrabEvent() override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  struct Lens {
    kneerail::elevation::RunView view;  ///< over the lens alone
    QRectF rect;                        ///< in the item
  };
  /// What the brackets stand around, in the run's own millimetres.
  struct Brackets {
    kneerail::elevation::RunPoint middle;
    double half_along_mm = 0;  ///< of a bay; 0: around a joint, sized on the glass
    double half_up_mm = 0;
  };

  void sheet_changed();
  void chosen_changed();
  void open_at_rule();
  void set_view(const kneerail::elevation::RunView& view);
  [[nodiscard]] kneerail::elevation::RunView clamped(kneerail::elevation::RunView view) const;
  [[nodiscard]] double resting_deck_px() const;
  [[nodiscard]] kneerail::elevation::RunView with_in_view(kneerail::elevation::RunView view,
                                                          const Brackets& chosen) const;
  void glide_to(const kneerail::elevation::RunView& view, int time_ms);
  void move_brackets(const std::optional<Brackets>& to);
  [[nodiscard]] std::optional<Brackets> brackets_of_chosen() const;
  [[nodiscard]] std::optional<Brackets> brackets_of_post() const;
  void fill_rings(const kneerail::RunSheet& before);
  void settle();
  void list_visible_parts();
  [[nodiscard]] kneerail::elevation::SceneWanted wanted() const;
  [[nodiscard]] kneerail::elevation::ShapeList bracket_shapes() const;
  [[nodiscard]] kneerail::elevation::ShapeList marked_shapes() const;

  void act(const std::vector<kneerail::elevation::Gesture>& gestures);
  void act(const kneerail::elevation::Gesture& gesture);
  void mouse(QMouseEvent* event, bool down);
  void wait_for_hold();
  void hand_gone();
  [[nodiscard]] std::int64_t time_of(const QInputEvent& event) const;
  [[nodiscard]] kneerail::elevation::Pick pick_at(double x_px, double y_px) const;
  [[nodiscard]] std::int64_t cell_at(double x_px, double y_px) const;
  void touched(double x_px, double y_px);
  void held(double x_px, double y_px);
  void enlarge(const kneerail::elevation::Pick& crowd);

  QPointer<RunPicture> picture_;
  std::shared_ptr<const kneerail::RunSheet> sheet_;
  kneerail::Uuid run_;
  kneerail::elevation::PickIndex index_;
  kneerail::elevation::RunView view_;
  double drawn_denominator_ = 25;  ///< of the last step; a pinch stretches what was made for it
  std::optional<qreal> deck_margin_px_;
  Qt::Edge thumb_side_ = Qt::RightEdge;
  bool scale_by_hand_ = false;
  bool tagged_ = true;
  std::optional<Lens> lens_;
  VisibleParts visible_parts_;

  kneerail::elevation::TouchFilter filter_;
  std::function<std::int64_t()> now_ms_;
  QTimer hold_timer_;
  bool hand_moves_ = false;

  QVariantAnimation glide_;
  kneerail::elevation::RunView glide_from_;
  kneerail::elevation::RunView glide_to_;
  QVariantAnimation bracket_glide_;
  std::optional<Brackets> brackets_;
  Brackets brackets_from_;
  Brackets brackets_to_;
  QVariantAnimation ring_fill_;
  kneerail::elevation::RingChange rings_;  ///< that fill or empty; none when it has ended

  kneerail::elevation::RunScene scene_;
};
