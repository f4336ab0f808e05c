#pragma once

#include <QDoubleSpinBox>
#include <optional>

#include "app/desktop/fields/number_range.h"

namespace drapewright::desktop {

/// A number with its unit and bounds. The plan follows while one types; what cannot be taken (out
/// of bounds, two ways to read it, another unit) is never cut down to something else: on leaving
/// the field the value from before the typing comes back, and `refused` says why.
/// The wheel turns it only while it has the focus, so that scrolling past changes nothing.
class NumberField : public QDoubleSpinBox {
  Q_OBJECT

 public:
  using Range = NumberRange;

  explicit NumberField(const Range& range, QWidget* parent = nullptr);

  /// Nothing while the field is empty (only when optional).
  std::optional<double> number() const;
  /// Shows a value without saying that it was entered. Text that already means it stays as typed.
  void show_number(std::optional<double> value);

  QValidator::State validate(QString& text, int& position) const override;
  double valueFromText(const QString& text) const override;
  QString textFromValue(double value) const override;
  void fixup(QString& text) const override;
  void stepBy(int steps) override;
  bool event(QEvent* event) override;
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 signals:
  void entered(std::optional<double> value);
  void refused(const QString& why) const;
  /// Typing is over.
  void left();

 protected:
  void wheelEvent(QWheelEvent* event) override;

 private:
  bool is_empty_value(double value) const;
  /// Why the text is not taken; empty when it is.
  QString objection(const QString& text) const;

  Range range_;
  double before_typing_ = 0;
};

}  // namespace drapewright::desktop
