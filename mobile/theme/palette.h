#pragma once

// The colours, one name each, in the two themes. Meaning is carried by ink on a near-white ground;
// shape says it first, so that every sign also reads in grey. There is no green: sound is plain
// ink.

#include <QColor>
#include <array>

namespace kneerail::theme {

struct Palette {
  QColor paper;                 ///< ground of drawings
  QColor sheet;                 ///< keys, notes, tags
  QColor shade;                 ///< ground of the pad
  QColor press;                 ///< soft keys, pressed
  QColor ink;                   ///< text, strokes
  QColor ink2;                  ///< second text
  QColor edge;                  ///< outline of tube, fitting, key
  QColor line;                  ///< rules, without meaning
  QColor hair;                  ///< grids, without meaning
  QColor zinc;                  ///< body of a tube
  QColor zinc_light;            ///< its light band
  QColor zinc_shade;            ///< its shade
  QColor bloom;                 ///< dulled tube
  QColor fitting_rust;          ///< body of a fitting at grade 3 or more
  QColor paint;                 ///< painted tube
  QColor primer;                ///< outside of a flake of paint
  std::array<QColor, 3> patch;  ///< rust on a tube, dark to light
  std::array<QColor, 5> grade;  ///< the glyphs of grades 1 to 5
  QColor rust;                  ///< limit lines and their labels
  QColor chalk;                 ///< finding, selection, what is yours now
  QColor chalk_light;           ///< ground of what is selected
  QColor act;                   ///< the one main act
  QColor act_ink;
  QColor tape;  ///< barrier board, for what cannot wait and nothing else
  QColor tape_ink;
  QColor tape_measure;  ///< surveyor's tape
  QColor ghost;         ///< last visit
  QColor band;          ///< forecast bands
  QColor concrete;      ///< quay
  QColor concrete_line;
};

enum class Theme { light, dark };

const Palette& palette(Theme theme);

}  // namespace kneerail::theme
