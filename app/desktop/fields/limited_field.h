#pragma once

#include <QWidget>

#include "app/desktop/fields/number_field.h"
#include "core/practice/limits.h"

class QLabel;

namespace drapewright::desktop {

/// What a limit means, its bounds, what is usual, and what that rests on: for a tooltip.
QString explanation_of(const practice::Limit& limit);
/// Small explaining text in the palette's quiet ink; wraps.
QLabel* quiet_text(const QString& text, QWidget* parent = nullptr);

/// A number that the table of limits knows: its title, the field with its unit, and below them its
/// bounds, what is usual and what that rests on. What was refused is told in the same place.
class LimitedField : public QWidget {
  Q_OBJECT

 public:
  struct Options {
    int decimals = 2;
    double step = 0.1;
    bool optional = false;
    QString when_empty;
  };
  LimitedField(const practice::Limit& limit, const Options& options, QWidget* parent = nullptr);

  NumberField& field() { return *field_; }
  void show_number(std::optional<double> value);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void tell_limits();
  void tell(const QString& text, bool warn);

  const practice::Limit& limit_;
  NumberField* field_;
  QLabel* line_;
};

}  // namespace drapewright::desktop
