#include "app/desktop/pages/page_settings.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QSettings>
#include <QVBoxLayout>

#include "app/desktop/fields/limited_field.h"
#include "app/desktop/fields/number_field.h"
#include "app/desktop/panels/page.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

const QString paper_key = "paper";
constexpr const char* across_key = "bar_across_mm";
constexpr const char* down_key = "bar_down_mm";

/// Bars outside of these bounds say that the print was fitted to the page.
NumberRange bar_range() {
  return {.minimum = report::least_bar_mm,
          .maximum = report::longest_bar_mm,
          .decimals = 1,
          .step = 0.1,
          .unit = "mm"};
}

double kept_bar(const char* key) {
  bool is_number = false;
  const double mm = QSettings().value(key, report::check_bar_mm).toDouble(&is_number);
  const bool usable = is_number && mm >= report::least_bar_mm && mm <= report::longest_bar_mm;
  return usable ? mm : report::check_bar_mm;
}

}  // namespace

PageSettings::PageSettings(QWidget* parent) : QWidget(parent) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(heading(spoken("What to print"), this));
  column->addWidget(kind_boxes());
  column->addWidget(heading(spoken("Paper and printer"), this));
  column->addWidget(paper_row());
  column->addWidget(printer_rows());
  column->addStretch(1);
}

QCheckBox* PageSettings::box(const QString& words, const char* name) {
  auto* box = new QCheckBox(words, this);
  box->setObjectName(name);
  connect(box, &QCheckBox::toggled, this, &PageSettings::changed);
  return box;
}

QWidget* PageSettings::kind_boxes() {
  auto* boxes = new QWidget(this);
  auto* column = new QVBoxLayout(boxes);
  column->setContentsMargins(0, 0, 0, 0);
  for (const report::PageKind kind : report::page_kinds()) {
    const std::string name = "pages_" + std::string(name_of(kind));
    auto* check = box(QString::fromStdString(title_of(kind)), name.c_str());
    check->setChecked(kind == report::PageKind::plan);
    column->addWidget(check);
    kinds_.push_back({kind, check});
  }
  templates_ = box(spoken("Cutting templates, life size"), "pages_templates");
  mirrored_ = box(spoken("with a mirrored film, for its backing"), "pages_mirrored");
  mirrored_->setEnabled(false);
  connect(templates_, &QCheckBox::toggled, mirrored_, &QCheckBox::setEnabled);
  squares_ = box(spoken("Squares to photograph a wound with"), "pages_squares");
  auto* below = new QHBoxLayout;
  below->addSpacing(20);
  below->addWidget(mirrored_);
  column->addWidget(templates_);
  column->addLayout(below);
  column->addWidget(squares_);
  return boxes;
}

QWidget* PageSettings::paper_row() {
  auto* row = new QWidget(this);
  auto* form = new QFormLayout(row);
  form->setContentsMargins(0, 0, 0, 0);
  paper_ = new QComboBox(row);
  paper_->setObjectName("pages_paper");
  paper_->addItem("A4, 210 x 297 mm", static_cast<int>(report::Paper::a4));
  paper_->addItem(spoken("Letter, 8.5 x 11 inches"), static_cast<int>(report::Paper::letter));
  paper_->setCurrentIndex(QSettings().value(paper_key).toString() == "letter" ? 1 : 0);
  connect(paper_, &QComboBox::currentIndexChanged, this, [this] {
    QSettings().setValue(paper_key, paper_->currentIndex() == 1 ? "letter" : "a4");
    emit changed();
  });
  form->addRow(spoken("Paper"), paper_);
  return row;
}

QWidget* PageSettings::printer_rows() {
  auto* rows = new QWidget(this);
  auto* form = new QFormLayout(rows);
  form->setContentsMargins(0, 0, 0, 0);
  form->addRow(quiet_text(
      spoken("Every page of templates has two bars of 100 mm. Print one, measure the bars, and "
             "type here what they came out as: the next print is stretched to be true."),
      rows));
  across_ = bar_field("pages_bar_across", across_key);
  down_ = bar_field("pages_bar_down", down_key);
  form->addRow(spoken("Bar across"), across_);
  form->addRow(spoken("Bar down"), down_);
  return rows;
}

NumberField* PageSettings::bar_field(const QString& name, const char* key) {
  auto* field = new NumberField(bar_range(), this);
  field->setObjectName(name);
  field->show_number(kept_bar(key));
  connect(field, &NumberField::entered, this,
          [this, key](std::optional<double> mm) { keep_bar(key, *mm); });
  connect(field, &NumberField::refused, field, &QWidget::setToolTip);
  return field;
}

void PageSettings::keep_bar(const char* key, double mm) {
  QSettings().setValue(key, mm);
  emit changed();
}

void PageSettings::offer_plan(bool there_is_one) {
  for (const KindBox& kind : kinds_) kind.box->setEnabled(there_is_one);
  templates_->setEnabled(there_is_one);
  mirrored_->setEnabled(there_is_one && templates_->isChecked());
  if (!there_is_one) squares_->setChecked(true);
}

PageWishes PageSettings::wishes() const {
  const auto is_wished = [](const QCheckBox* box) { return box->isEnabled() && box->isChecked(); };
  PageWishes wishes{.kinds = {},
                    .templates = is_wished(templates_),
                    .mirror_film = is_wished(mirrored_),
                    .squares = is_wished(squares_),
                    .paper = static_cast<report::Paper>(paper_->currentData().toInt()),
                    .printer = {across_->number().value_or(report::check_bar_mm),
                                down_->number().value_or(report::check_bar_mm)}};
  for (const KindBox& kind : kinds_) {
    if (is_wished(kind.box)) wishes.kinds.push_back(kind.kind);
  }
  return wishes;
}

}  // namespace drapewright::desktop
