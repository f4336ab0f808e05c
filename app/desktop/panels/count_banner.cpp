#include "app/desktop/panels/count_banner.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <algorithm>

#include "app/desktop/fields/limited_field.h"
#include "app/desktop/theme/marks.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

using dressing::Severity;

QString count_words(const std::vector<dressing::Finding>& findings, Severity severity,
                    std::string_view one, std::string_view many) {
  const auto count = std::ranges::count(findings, severity, &dressing::Finding::severity);
  return count == 0 ? QString() : spoken_count(static_cast<int>(count), one, many);
}

}  // namespace

CountBanner::CountBanner(QWidget* parent)
    : QWidget(parent),
      count_(new QLabel(this)),
      advice_(quiet_text({}, this)),
      mark_(new QLabel(this)),
      weights_(new QLabel(this)) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 4);
  grid->addWidget(count_, 0, 0, 1, 2);
  grid->addWidget(advice_, 1, 0, 1, 2);
  grid->addWidget(mark_, 2, 0);
  grid->addWidget(weights_, 2, 1);
  grid->setColumnStretch(1, 1);
  count_->setObjectName("piece_count");
  weights_->setWordWrap(true);
  fit_font();
  show_result({});
}

void CountBanner::show_result(const PlanResult& result) {
  findings_ = findings_of(result);
  if (result.plan) {
    count_->setText(
        spoken("{1} of filler", {count_of(result.plan->fill.piece_count, "piece", "pieces")}));
    advice_->setText(spoken("Count them in, write the number on the dressing, count them out."));
  } else {
    count_->setText(result.planned ? spoken("No plan") : spoken("Nothing planned yet"));
    advice_->setText(result.planned ? spoken("See the findings for what is wrong.")
                                    : spoken("The count of filler pieces will stand here."));
  }
  show_weights();
}

QString CountBanner::count_text() const { return count_->text(); }

void CountBanner::show_weights() {
  QStringList parts{count_words(findings_, Severity::stop, "stop", "stops"),
                    count_words(findings_, Severity::warning, "warning", "warnings"),
                    count_words(findings_, Severity::note, "note", "notes")};
  parts.removeAll(QString());
  weights_->setText(parts.join(", "));
  weights_->setVisible(!parts.isEmpty());
  mark_->setVisible(!parts.isEmpty());
  count_->setPalette(palette());
  if (findings_.empty()) return;
  const Severity gravest =
      std::ranges::min_element(findings_, {}, &dressing::Finding::severity)->severity;
  const int size = fontMetrics().height() * 5 / 4;
  mark_->setPixmap(severity_mark(gravest, palette(), size).pixmap(size, size));
  QPalette own = palette();
  own.setColor(QPalette::WindowText, severity_ink(gravest, palette()));
  weights_->setPalette(own);
  if (gravest == Severity::stop) count_->setPalette(own);  // no plan to be carried out as it is
}

void CountBanner::fit_font() {
  QFont large = font();
  large.setBold(true);
  large.setPointSizeF(large.pointSizeF() * 1.7);
  count_->setFont(large);
  QFont bold = font();
  bold.setBold(true);
  weights_->setFont(bold);
}

void CountBanner::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) fit_font();
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) show_weights();
}

}  // namespace drapewright::desktop
