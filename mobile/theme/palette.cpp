#include "mobile/theme/palette.h"

namespace kneerail::theme {

namespace {

Palette light() {
  return {.paper = "#F7F7F2",
          .sheet = "#FFFFFF",
          .shade = "#ECEDE8",
          .press = "#E9ECE8",
          .ink = "#101619",
          .ink2 = "#38444B",
          .edge = "#26333A",
          .line = "#B4BCBE",
          .hair = "#D5DADA",
          .zinc = "#C6D0D4",
          .zinc_light = "#EEF2F3",
          .zinc_shade = "#8B9AA2",
          .bloom = "#E6EAE6",
          .fitting_rust = "#D3C1AE",
          .paint = "#DDE3E2",
          .primer = "#A7866B",
          .patch = {"#8A2C0C", "#B4561F", "#D08A50"},
          .grade = {"#22323B", "#465862", "#84480F", "#6E1D05", "#2E0702"},
          .rust = "#8A2C0C",
          .chalk = "#0A4690",
          .chalk_light = "#DCE8F6",
          .act = "#0B3A5B",
          .act_ink = "#FFFFFF",
          .tape = "#FFC51F",
          .tape_ink = "#14100A",
          .tape_measure = "#FFF3C4",
          .ghost = "#7A878D",
          .band = "#7B8A92",
          .concrete = "#E4E3DB",
          .concrete_line = "#9B9A90"};
}

Palette dark() {
  return {.paper = "#0E1417",
          .sheet = "#172025",
          .shade = "#1B252A",
          .press = "#24303A",
          .ink = "#F2F4EF",
          .ink2 = "#BAC6CC",
          .edge = "#D7DFE2",
          .line = "#4C5A62",
          .hair = "#2B363C",
          .zinc = "#7E8E97",
          .zinc_light = "#B9C6CC",
          .zinc_shade = "#4A5961",
          .bloom = "#A9B3B2",
          .fitting_rust = "#8A6A50",
          .paint = "#5F6E76",
          .primer = "#8A6A50",
          .patch = {"#571C06", "#7A2F0E", "#8F4A22"},
          .grade = {"#DCE6EA", "#AFBEC6", "#F6C68C", "#F27F4A", "#FFE9DD"},
          .rust = "#FF9A6B",
          .chalk = "#A5CCFF",
          .chalk_light = "#1D3350",
          .act = "#A5CCFF",
          .act_ink = "#0B1D2E",
          .tape = "#FFCB3D",
          .tape_ink = "#14100A",
          .tape_measure = "#3A3420",
          .ghost = "#8D9BA2",
          .band = "#8394A0",
          .concrete = "#242B2D",
          .concrete_line = "#5B6468"};
}

}  // namespace

const Palette& palette(Theme theme) {
  static const Palette palettes[] = {light(), dark()};
  return palettes[theme == Theme::dark ? 1 : 0];
}

}  // namespace kneerail::theme
