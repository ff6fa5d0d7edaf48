#pragma once

// Tokens: every colour, size, text size and duration of the screens, by role. Sizes are
// millimetres on the glass, turned into pixels by the screen's density. The drawings were made for
// 5.88 pixels in a millimetre (1280 x 800 on 10.1 inch); drawn(n) is n of those pixels.

#include <QtQml/qqmlregistration.h>
#include <QColor>
#include <QObject>
#include <QString>
#include <algorithm>

#include "mobile/theme/glass.h"
#include "mobile/theme/palette.h"

class Tokens : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  // What the person chose.
  Q_PROPERTY(bool dark READ dark WRITE set_dark NOTIFY themeChanged)
  Q_PROPERTY(bool moreContrast READ more_contrast WRITE set_more_contrast NOTIFY themeChanged)
  Q_PROPERTY(bool leftHanded READ left_handed WRITE set_left_handed NOTIFY handChanged)
  Q_PROPERTY(bool lessMotion READ less_motion WRITE set_less_motion NOTIFY motionChanged)
  Q_PROPERTY(bool sounds READ sounds WRITE set_sounds NOTIFY soundsChanged)
  Q_PROPERTY(bool soundIsThere READ sound_is_there NOTIFY soundsChanged)  ///< it can be heard
  Q_PROPERTY(qreal textScale READ text_scale WRITE set_text_scale NOTIFY sizesChanged)
  Q_PROPERTY(bool wordsGrow READ words_grow NOTIFY sizesChanged)
  Q_PROPERTY(qreal pixelsPerMm READ pixels_per_mm WRITE set_pixels_per_mm NOTIFY sizesChanged)
  Q_PROPERTY(bool sizeMeasured READ size_measured WRITE set_size_measured NOTIFY sizesChanged)
  // Colours.
  Q_PROPERTY(QColor paper READ paper NOTIFY themeChanged)
  Q_PROPERTY(QColor sheet READ sheet NOTIFY themeChanged)
  Q_PROPERTY(QColor shade READ shade NOTIFY themeChanged)
  Q_PROPERTY(QColor press READ press NOTIFY themeChanged)
  Q_PROPERTY(QColor ink READ ink NOTIFY themeChanged)
  Q_PROPERTY(QColor edge READ edge NOTIFY themeChanged)
  Q_PROPERTY(QColor line READ line NOTIFY themeChanged)
  Q_PROPERTY(QColor hair READ hair NOTIFY themeChanged)
  Q_PROPERTY(QColor zinc READ zinc NOTIFY themeChanged)
  Q_PROPERTY(QColor zincLight READ zinc_light NOTIFY themeChanged)
  Q_PROPERTY(QColor zincShade READ zinc_shade NOTIFY themeChanged)
  Q_PROPERTY(QColor bloom READ bloom NOTIFY themeChanged)
  Q_PROPERTY(QColor rust READ rust NOTIFY themeChanged)
  Q_PROPERTY(QColor chalk READ chalk NOTIFY themeChanged)
  Q_PROPERTY(QColor chalkLight READ chalk_light NOTIFY themeChanged)
  Q_PROPERTY(QColor act READ act NOTIFY themeChanged)
  Q_PROPERTY(QColor actInk READ act_ink NOTIFY themeChanged)
  Q_PROPERTY(QColor tape READ tape NOTIFY themeChanged)
  Q_PROPERTY(QColor tapeInk READ tape_ink NOTIFY themeChanged)
  Q_PROPERTY(QColor tapeMeasure READ tape_measure NOTIFY themeChanged)
  Q_PROPERTY(QColor band READ band NOTIFY themeChanged)
  Q_PROPERTY(QColor concrete READ concrete NOTIFY themeChanged)
  Q_PROPERTY(QColor concreteLine READ concrete_line NOTIFY themeChanged)
  Q_PROPERTY(QColor ink2 READ ink2 NOTIFY themeChanged)
  Q_PROPERTY(QColor ghost READ ghost NOTIFY themeChanged)
  // Sizes.
  Q_PROPERTY(qreal touchTarget READ touch_target NOTIFY sizesChanged)
  Q_PROPERTY(qreal digitKeyWidth READ digit_key_width NOTIFY sizesChanged)
  Q_PROPERTY(qreal digitKeyHeight READ digit_key_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal mainActHeight READ main_act_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal padChoiceHeight READ pad_choice_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal padWidth READ pad_width NOTIFY sizesChanged)
  Q_PROPERTY(qreal narrowWindow READ narrow_window NOTIFY sizesChanged)
  Q_PROPERTY(qreal gap READ gap NOTIFY sizesChanged)
  Q_PROPERTY(qreal smallGap READ small_gap NOTIFY sizesChanged)
  Q_PROPERTY(qreal inset READ inset NOTIFY sizesChanged)
  Q_PROPERTY(qreal margin READ margin NOTIFY sizesChanged)
  Q_PROPERTY(qreal pageMargin READ page_margin NOTIFY sizesChanged)
  Q_PROPERTY(qreal railHeight READ rail_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal siteLineHeight READ site_line_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal tapeHeight READ tape_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal runLineHeight READ run_line_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal portraitPadHeight READ portrait_pad_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal portraitDeckMargin READ portrait_deck_margin NOTIFY sizesChanged)
  Q_PROPERTY(qreal footHeight READ foot_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal tubeTop READ tube_top NOTIFY sizesChanged)
  Q_PROPERTY(qreal tubeHeight READ tube_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal tagTop READ tag_top NOTIFY sizesChanged)
  Q_PROPERTY(qreal tagWidth READ tag_width NOTIFY sizesChanged)
  Q_PROPERTY(qreal tagHeight READ tag_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal tagHeightChosen READ tag_height_chosen NOTIFY sizesChanged)
  Q_PROPERTY(qreal tagCut READ tag_cut NOTIFY sizesChanged)
  Q_PROPERTY(qreal tagHole READ tag_hole NOTIFY sizesChanged)
  Q_PROPERTY(qreal tagHook READ tag_hook NOTIFY sizesChanged)
  Q_PROPERTY(qreal cellWidth READ cell_width NOTIFY sizesChanged)
  Q_PROPERTY(qreal noteHeight READ note_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal slotWidth READ slot_width NOTIFY sizesChanged)
  Q_PROPERTY(qreal slotHeight READ slot_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal slotCut READ slot_cut NOTIFY sizesChanged)
  Q_PROPERTY(qreal slotEdgeHere READ slot_edge_here NOTIFY sizesChanged)
  Q_PROPERTY(qreal sleeveHeight READ sleeve_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal inkBarHeight READ ink_bar_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal torqueScaleHeight READ torque_scale_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal keyCut READ key_cut NOTIFY sizesChanged)
  Q_PROPERTY(qreal keyEdge READ key_edge NOTIFY sizesChanged)
  Q_PROPERTY(qreal keyEdgeChosen READ key_edge_chosen NOTIFY sizesChanged)
  Q_PROPERTY(qreal keyFoot READ key_foot NOTIFY sizesChanged)
  Q_PROPERTY(qreal ruleStroke READ rule_stroke NOTIFY sizesChanged)
  Q_PROPERTY(qreal hairStroke READ hair_stroke NOTIFY sizesChanged)
  Q_PROPERTY(qreal noteStroke READ note_stroke NOTIFY sizesChanged)
  Q_PROPERTY(qreal focusRing READ focus_ring NOTIFY sizesChanged)
  Q_PROPERTY(qreal focusGround READ focus_ground NOTIFY sizesChanged)
  Q_PROPERTY(qreal signWidth READ sign_width NOTIFY sizesChanged)
  Q_PROPERTY(qreal signHeight READ sign_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal glyphOnKey READ glyph_on_key NOTIFY sizesChanged)
  Q_PROPERTY(qreal glyphInList READ glyph_in_list NOTIFY sizesChanged)
  Q_PROPERTY(qreal glyphOnDrawing READ glyph_on_drawing NOTIFY sizesChanged)
  Q_PROPERTY(qreal coatingDeckMargin READ coating_deck_margin NOTIFY sizesChanged)
  Q_PROPERTY(qreal boltsBeside READ bolts_beside NOTIFY sizesChanged)
  Q_PROPERTY(qreal ringOnPicture READ ring_on_picture NOTIFY sizesChanged)
  Q_PROPERTY(qreal pictureFootHeight READ picture_foot_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal findingTagWidth READ finding_tag_width NOTIFY sizesChanged)
  Q_PROPERTY(qreal findingTagCut READ finding_tag_cut NOTIFY sizesChanged)
  Q_PROPERTY(qreal barrierHeight READ barrier_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal dotRadius READ dot_radius NOTIFY sizesChanged)
  Q_PROPERTY(qreal siteColumn READ site_column NOTIFY sizesChanged)
  Q_PROPERTY(qreal dueTagWidth READ due_tag_width NOTIFY sizesChanged)
  Q_PROPERTY(qreal dueTagHeight READ due_tag_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal bandFootHeight READ band_foot_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal scaleBarHeight READ scale_bar_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal scaleBarWidth READ scale_bar_width NOTIFY sizesChanged)
  Q_PROPERTY(qreal bandScaleLeast READ band_scale_least NOTIFY sizesChanged)
  Q_PROPERTY(qreal bandScaleMost READ band_scale_most NOTIFY sizesChanged)
  Q_PROPERTY(qreal placeHeight READ place_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal placeScale READ place_scale CONSTANT)
  Q_PROPERTY(qreal tagScale READ tag_scale CONSTANT)
  Q_PROPERTY(qreal storyHeight READ story_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal timeBarWidth READ time_bar_width NOTIFY sizesChanged)
  Q_PROPERTY(qreal timeBarHeight READ time_bar_height NOTIFY sizesChanged)
  Q_PROPERTY(qreal sealSlide READ seal_slide NOTIFY sizesChanged)
  Q_PROPERTY(qreal cardWidth READ card_width NOTIFY sizesChanged)
  Q_PROPERTY(qreal cardHeight READ card_height NOTIFY sizesChanged)
  // Text sizes, for font.pixelSize.
  Q_PROPERTY(int captionText READ caption_text NOTIFY sizesChanged)
  Q_PROPERTY(int cellText READ cell_text NOTIFY sizesChanged)
  Q_PROPERTY(int tagText READ tag_text NOTIFY sizesChanged)
  Q_PROPERTY(int wasText READ was_text NOTIFY sizesChanged)
  Q_PROPERTY(int smallText READ small_text NOTIFY sizesChanged)
  Q_PROPERTY(int bodyText READ body_text NOTIFY sizesChanged)
  Q_PROPERTY(int labelText READ label_text NOTIFY sizesChanged)
  Q_PROPERTY(int keyText READ key_text NOTIFY sizesChanged)
  Q_PROPERTY(int gradeText READ grade_text NOTIFY sizesChanged)
  Q_PROPERTY(int mainText READ main_text NOTIFY sizesChanged)
  Q_PROPERTY(int slotText READ slot_text NOTIFY sizesChanged)
  Q_PROPERTY(int digitText READ digit_text NOTIFY sizesChanged)
  Q_PROPERTY(int figureText READ figure_text NOTIFY sizesChanged)
  // Text.
  Q_PROPERTY(QString textFamily READ text_family CONSTANT)
  Q_PROPERTY(QString digestFamily READ digest_family CONSTANT)
  Q_PROPERTY(QString missingFonts READ missing_fonts CONSTANT)
  // Durations, ms.
  Q_PROPERTY(int dotDropTime READ dot_drop_time NOTIFY motionChanged)
  Q_PROPERTY(int partGlideTime READ part_glide_time NOTIFY motionChanged)
  Q_PROPERTY(int postGlideTime READ post_glide_time NOTIFY motionChanged)
  Q_PROPERTY(int boardTime READ board_time NOTIFY motionChanged)
  Q_PROPERTY(int undoTime READ undo_time NOTIFY motionChanged)
  Q_PROPERTY(int homeTime READ home_time NOTIFY motionChanged)
  Q_PROPERTY(int palmRestTime READ palm_rest_time CONSTANT)
  Q_PROPERTY(int sealHoldTime READ seal_hold_time CONSTANT)
  Q_PROPERTY(int inkBarTime READ ink_bar_time CONSTANT)
  Q_PROPERTY(int loadingTime READ loading_time CONSTANT)

 public:
  explicit Tokens(QObject* parent = nullptr);
  /// The tokens of the engine that made `item`; null where there is none.
  static Tokens* of(const QObject& item);

  [[nodiscard]] bool dark() const { return theme_ == kneerail::theme::Theme::dark; }
  void set_dark(bool dark);
  [[nodiscard]] bool more_contrast() const { return more_contrast_; }
  void set_more_contrast(bool more);
  [[nodiscard]] bool left_handed() const { return left_handed_; }
  void set_left_handed(bool left);
  [[nodiscard]] bool less_motion() const { return less_motion_; }
  void set_less_motion(bool less);
  [[nodiscard]] bool sounds() const { return sounds_; }
  void set_sounds(bool sounds);
  [[nodiscard]] bool sound_is_there() const { return sound_is_there_; }
  void set_sound_is_there(bool there);
  /// 1.0, 1.2, 1.4 or 1.7; another number becomes the nearest of them.
  [[nodiscard]] qreal text_scale() const { return text_scale_; }
  void set_text_scale(qreal scale);
  /// Words may be longer or larger than keys were drawn for: of another language, or larger
  /// letters.
  [[nodiscard]] bool words_grow() const;
  /// Of letters that stand in a frame of one height.
  [[nodiscard]] qreal place_text_scale() const { return std::min(text_scale_, 1.15); }
  [[nodiscard]] qreal pixels_per_mm() const { return pixels_per_mm_; }
  /// A size given in the pixels of the drawings.
  [[nodiscard]] qreal drawn(qreal pixels) const {
    return pixels / kneerail::theme::drawn_pixels_per_mm * pixels_per_mm_;
  }
  void set_pixels_per_mm(qreal pixels);
  /// Somebody laid something of known size on the glass: a scale is a scale, not about one.
  [[nodiscard]] bool size_measured() const { return size_measured_; }
  void set_size_measured(bool measured);

  [[nodiscard]] const kneerail::theme::Palette& palette() const {
    return kneerail::theme::palette(theme_);
  }
  [[nodiscard]] QColor paper() const { return palette().paper; }
  [[nodiscard]] QColor sheet() const { return palette().sheet; }
  [[nodiscard]] QColor shade() const { return palette().shade; }
  [[nodiscard]] QColor press() const { return palette().press; }
  [[nodiscard]] QColor ink() const { return palette().ink; }
  [[nodiscard]] QColor edge() const { return palette().edge; }
  [[nodiscard]] QColor line() const { return palette().line; }
  [[nodiscard]] QColor hair() const { return palette().hair; }
  [[nodiscard]] QColor zinc() const { return palette().zinc; }
  [[nodiscard]] QColor zinc_light() const { return palette().zinc_light; }
  [[nodiscard]] QColor zinc_shade() const { return palette().zinc_shade; }
  [[nodiscard]] QColor bloom() const { return palette().bloom; }
  [[nodiscard]] QColor rust() const { return palette().rust; }
  [[nodiscard]] QColor chalk() const { return palette().chalk; }
  [[nodiscard]] QColor chalk_light() const { return palette().chalk_light; }
  [[nodiscard]] QColor act() const { return palette().act; }
  [[nodiscard]] QColor act_ink() const { return palette().act_ink; }
  [[nodiscard]] QColor tape() const { return palette().tape; }
  [[nodiscard]] QColor tape_ink() const { return palette().tape_ink; }
  [[nodiscard]] QColor tape_measure() const { return palette().tape_measure; }
  [[nodiscard]] QColor band() const { return palette().band; }
  [[nodiscard]] QColor concrete() const { return palette().concrete; }
  [[nodiscard]] QColor concrete_line() const { return palette().concrete_line; }
  [[nodiscard]] QColor ink2() const { return more_contrast_ ? palette().ink : palette().ink2; }
  [[nodiscard]] QColor ghost() const { return more_contrast_ ? palette().ink2 : palette().ghost; }

  [[nodiscard]] qreal touch_target() const {
    return mm(11);
  }  ///< any key used on the walk is at least this high
  [[nodiscard]] qreal digit_key_width() const { return mm(20); }
  [[nodiscard]] qreal digit_key_height() const { return mm(19); }
  [[nodiscard]] qreal main_act_height() const { return drawn(90); }
  [[nodiscard]] qreal pad_choice_height() const { return drawn(78); }
  [[nodiscard]] qreal pad_width() const { return drawn(404); }
  [[nodiscard]] qreal narrow_window() const {
    return drawn(700);
  }  ///< under this width the pad takes the full width
  [[nodiscard]] qreal gap() const {
    return mm(1.4);
  }  ///< between keys; the touch area fills half of it
  [[nodiscard]] qreal small_gap() const { return drawn(4); }
  [[nodiscard]] qreal inset() const { return drawn(12); }   ///< inside a note
  [[nodiscard]] qreal margin() const { return drawn(18); }  ///< inside a pad
  [[nodiscard]] qreal page_margin() const { return drawn(24); }
  [[nodiscard]] qreal rail_height() const {
    return drawn(84);
  }  ///< top rail with tags and title block
  [[nodiscard]] qreal site_line_height() const {
    return drawn(44);
  }  ///< portrait: site and signal under the rail
  [[nodiscard]] qreal tape_height() const { return drawn(38); }  ///< surveyor's tape
  [[nodiscard]] qreal run_line_height() const { return drawn(92); }
  [[nodiscard]] qreal portrait_pad_height() const { return drawn(502); }
  [[nodiscard]] qreal portrait_deck_margin() const {
    return drawn(30);
  }  ///< from a drawing's foot up to its deck, where there is little height
  [[nodiscard]] qreal foot_height() const {
    return drawn(86);
  }  ///< portrait: what was saved, under the pad
  [[nodiscard]] qreal tube_top() const { return drawn(5); }  ///< the top rail's tube
  [[nodiscard]] qreal tube_height() const { return drawn(14); }
  [[nodiscard]] qreal tag_top() const { return drawn(24); }  ///< of a tag hung on the top rail
  [[nodiscard]] qreal tag_width() const { return drawn(114); }
  [[nodiscard]] qreal tag_height() const { return drawn(50); }
  [[nodiscard]] qreal tag_height_chosen() const { return drawn(58); }
  [[nodiscard]] qreal tag_cut() const { return drawn(12); }
  [[nodiscard]] qreal tag_hole() const { return drawn(3.4); }    ///< radius
  [[nodiscard]] qreal tag_hook() const { return drawn(18); }     ///< width
  [[nodiscard]] qreal cell_width() const { return drawn(180); }  ///< of the title block
  [[nodiscard]] qreal note_height() const { return drawn(112); }
  [[nodiscard]] qreal slot_width() const { return drawn(70); }
  [[nodiscard]] qreal slot_height() const { return drawn(66); }
  [[nodiscard]] qreal slot_cut() const { return drawn(7); }
  [[nodiscard]] qreal slot_edge_here() const { return drawn(3.5); }
  [[nodiscard]] qreal sleeve_height() const {
    return drawn(42);
  }  ///< of a tube that a sleeve closes
  [[nodiscard]] qreal ink_bar_height() const { return drawn(84); }
  [[nodiscard]] qreal torque_scale_height() const { return drawn(96); }
  [[nodiscard]] qreal key_cut() const { return drawn(9); }  ///< cut corners of a key
  [[nodiscard]] qreal key_edge() const { return drawn(2); }
  [[nodiscard]] qreal key_edge_chosen() const { return drawn(3); }
  [[nodiscard]] qreal key_foot() const { return drawn(4); }  ///< bar along the foot: can be pressed
  [[nodiscard]] qreal rule_stroke() const { return drawn(1.5); }
  [[nodiscard]] qreal hair_stroke() const { return drawn(1); }
  [[nodiscard]] qreal note_stroke() const { return drawn(2.4); }  ///< a note's frame and its leader
  [[nodiscard]] qreal focus_ring() const { return drawn(3); }     ///< ink
  [[nodiscard]] qreal focus_ground() const { return drawn(2); }   ///< sheet, inside the ring
  [[nodiscard]] qreal sign_width() const { return drawn(46); }
  [[nodiscard]] qreal sign_height() const { return drawn(34); }   ///< sign over a label on a key
  [[nodiscard]] qreal glyph_on_key() const { return drawn(34); }  ///< radius of a grade glyph
  [[nodiscard]] qreal glyph_in_list() const { return drawn(21); }
  [[nodiscard]] qreal glyph_on_drawing() const { return drawn(15); }
  [[nodiscard]] qreal coating_deck_margin() const {
    return drawn(37);
  }  ///< across, under a coating note: the ground, without dimensions
  [[nodiscard]] qreal bolts_beside() const {
    return drawn(52);
  }  ///< from a post's middle to beyond the sign of its bolts
  [[nodiscard]] qreal ring_on_picture() const { return drawn(6); }        ///< a mark's white stroke
  [[nodiscard]] qreal picture_foot_height() const { return drawn(154); }  ///< keys under a picture
  [[nodiscard]] qreal finding_tag_width() const { return drawn(304); }
  [[nodiscard]] qreal finding_tag_cut() const { return drawn(26); }
  [[nodiscard]] qreal barrier_height() const {
    return drawn(18);
  }                                                               ///< the board of what cannot wait
  [[nodiscard]] qreal dot_radius() const { return drawn(5.5); }   ///< a reading on a strip
  [[nodiscard]] qreal site_column() const { return drawn(272); }  ///< a site's name and counts
  [[nodiscard]] qreal due_tag_width() const { return drawn(182); }
  [[nodiscard]] qreal due_tag_height() const { return drawn(66); }
  [[nodiscard]] qreal band_foot_height() const { return drawn(74); }  ///< scale bar under the bands
  [[nodiscard]] qreal scale_bar_height() const { return drawn(9); }
  [[nodiscard]] qreal scale_bar_width() const { return drawn(150); }   ///< at most
  [[nodiscard]] qreal band_scale_least() const { return drawn(1.2); }  ///< of a metre of run
  [[nodiscard]] qreal band_scale_most() const { return drawn(4); }
  [[nodiscard]] qreal place_height() const { return drawn(200); }  ///< of the piece of rail
  [[nodiscard]] qreal place_scale() const { return 50; }           ///< of that piece, 1:50
  [[nodiscard]] qreal tag_scale() const { return 70; }  ///< on a tag and beside a picture, 1:70
  [[nodiscard]] qreal story_height() const { return drawn(144); }    ///< the forecast in sentences
  [[nodiscard]] qreal time_bar_width() const { return drawn(120); }  ///< of 15 years
  [[nodiscard]] qreal time_bar_height() const { return drawn(8); }
  [[nodiscard]] qreal seal_slide() const { return mm(60); }  ///< how far a seal is slid
  [[nodiscard]] qreal card_width() const { return mm(kneerail::theme::card_width_mm); }
  [[nodiscard]] qreal card_height() const { return mm(kneerail::theme::card_height_mm); }

  [[nodiscard]] int caption_text() const { return text_in_place(15); }  ///< title block
  [[nodiscard]] int cell_text() const {
    return text_in_place(17);
  }  ///< what stands in a cell of the title block
  [[nodiscard]] int tag_text() const { return text_in_place(20); }  ///< a room's name
  [[nodiscard]] int was_text() const { return text_in_place(16); }  ///< last visit's, in a slot
  [[nodiscard]] int small_text() const { return text(16); }         ///< notes, tick labels
  [[nodiscard]] int body_text() const { return text(18); }
  [[nodiscard]] int label_text() const { return text(20); }           ///< two-line key, pad heading
  [[nodiscard]] int key_text() const { return text(22); }             ///< key label, heading
  [[nodiscard]] int grade_text() const { return text_in_place(26); }  ///< its number on a key
  [[nodiscard]] int main_text() const { return text(24); }            ///< the one main act
  [[nodiscard]] int slot_text() const { return text_in_place(28); }   ///< reading in a slot
  [[nodiscard]] int digit_text() const { return text(34); }           ///< digit key
  [[nodiscard]] int figure_text() const { return text(42); }  ///< the one figure that counts

  [[nodiscard]] QString text_family() const { return text_family_; }
  [[nodiscard]] QString digest_family() const { return digest_family_; }
  /// A sentence that names the Debian package of each font that is not on this machine; empty when
  /// all are.
  [[nodiscard]] QString missing_fonts() const { return missing_fonts_; }

  [[nodiscard]] int dot_drop_time() const { return motion(120); }    ///< a reading kept
  [[nodiscard]] int part_glide_time() const { return motion(180); }  ///< brackets to the next part
  [[nodiscard]] int post_glide_time() const { return motion(220); }  ///< drawing to the next post
  [[nodiscard]] int board_time() const { return motion(240); }       ///< a board across the bay
  [[nodiscard]] int undo_time() const { return motion(120); }
  [[nodiscard]] int home_time() const { return motion(400); }  ///< sleeves close, once
  [[nodiscard]] int palm_rest_time() const { return 400; }     ///< keys rest after rain or a palm
  [[nodiscard]] int seal_hold_time() const { return 2'000; }   ///< Enter, held
  [[nodiscard]] int ink_bar_time() const { return 10'000; }    ///< how long Undo stands there
  [[nodiscard]] int loading_time() const { return 300; }  ///< after this a tube with true counts

 signals:
  void themeChanged();
  void sizesChanged();
  void motionChanged();
  void soundsChanged();
  void handChanged();

 private:
  [[nodiscard]] qreal mm(qreal length) const { return length * pixels_per_mm_; }
  [[nodiscard]] int text(qreal pixels) const { return qRound(drawn(pixels) * text_scale_); }
  /// In a frame of one height for all sizes of letters: they grow as far as it has room.
  [[nodiscard]] int text_in_place(qreal pixels) const {
    return qRound(drawn(pixels) * place_text_scale());
  }
  [[nodiscard]] int motion(int time_ms) const { return less_motion_ ? 0 : time_ms; }

  kneerail::theme::Theme theme_ = kneerail::theme::Theme::light;
  bool more_contrast_ = false;
  bool left_handed_ = false;
  bool less_motion_ = false;
  bool sounds_ = true;
  bool sound_is_there_ = false;
  qreal text_scale_ = 1;
  qreal pixels_per_mm_ = kneerail::theme::drawn_pixels_per_mm;
  bool size_measured_ = false;
  QString text_family_;
  QString digest_family_;
  QString missing_fonts_;
};
