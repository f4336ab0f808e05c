#include "app/desktop/theme/palette.h"

#include <algorithm>
#include <cmath>

namespace drapewright::desktop {
namespace {

struct Tones {
  QRgb window, base, stripe, text, button, placeholder, disabled;
  QRgb highlight, highlighted_text, link, tip, tip_text;
};

QPalette palette_of(const Tones& tones) {
  QPalette palette{QColor(tones.button), QColor(tones.window)};
  const auto set = [&](QPalette::ColorRole role, QRgb tone) {
    palette.setColor(role, QColor(tone));
  };
  set(QPalette::Window, tones.window);
  set(QPalette::Base, tones.base);
  set(QPalette::AlternateBase, tones.stripe);
  set(QPalette::WindowText, tones.text);
  set(QPalette::Text, tones.text);
  set(QPalette::Button, tones.button);
  set(QPalette::ButtonText, tones.text);
  set(QPalette::BrightText, tones.text);
  set(QPalette::PlaceholderText, tones.placeholder);
  set(QPalette::Highlight, tones.highlight);
  set(QPalette::HighlightedText, tones.highlighted_text);
  set(QPalette::Link, tones.link);
  set(QPalette::LinkVisited, tones.link);
  set(QPalette::ToolTipBase, tones.tip);
  set(QPalette::ToolTipText, tones.tip_text);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
    palette.setColor(QPalette::Disabled, role, QColor(tones.disabled));
  }
  return palette;
}

double linear(double channel) {
  return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double luminance(const QColor& colour) {
  return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
         0.0722 * linear(colour.blueF());
}

}  // namespace

QPalette light_palette() {
  return palette_of({.window = 0xfff3f5f6,
                     .base = 0xffffffff,
                     .stripe = 0xffeef2f4,
                     .text = 0xff1a1e22,
                     .button = 0xffe6eaed,
                     .placeholder = 0xff5c646c,
                     .disabled = 0xff5e666d,
                     .highlight = 0xff0b5a9c,
                     .highlighted_text = 0xffffffff,
                     .link = 0xff0b5a9c,
                     .tip = 0xff1f272e,
                     .tip_text = 0xfff5f7f8});
}

QPalette dark_palette() {
  return palette_of({.window = 0xff20252a,
                     .base = 0xff171b1f,
                     .stripe = 0xff1d2227,
                     .text = 0xffe9ecee,
                     .button = 0xff2f363d,
                     .placeholder = 0xffa0a9b2,
                     .disabled = 0xff98a1a9,
                     .highlight = 0xff8cc4f2,
                     .highlighted_text = 0xff0d1318,
                     .link = 0xff8cc4f2,
                     .tip = 0xfff0f3f5,
                     .tip_text = 0xff14191d});
}

bool is_dark(const QPalette& palette) {
  return luminance(palette.color(QPalette::Window)) <
         luminance(palette.color(QPalette::WindowText));
}

double contrast_ratio(const QColor& a, const QColor& b) {
  const auto [low, high] = std::minmax({luminance(a), luminance(b)});
  return (high + 0.05) / (low + 0.05);
}

Inks inks(const QPalette& palette) {
  if (is_dark(palette)) {
    return {.stop = QColor(0xffff9a85),
            .warning = QColor(0xfff0bf4c),
            .note = QColor(0xff8cc4f2),
            .muted = QColor(0xffa9b2ba),
            .outline = QColor(0xff89929a)};
  }
  return {.stop = QColor(0xffab2a12),
          .warning = QColor(0xff7d5200),
          .note = QColor(0xff0b5a9c),
          .muted = QColor(0xff545c64),
          .outline = QColor(0xff7b848c)};
}

}  // namespace drapewright::desktop
