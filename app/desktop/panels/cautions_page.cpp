#include "app/desktop/panels/cautions_page.h"

#include <QCheckBox>
#include <QLabel>
#include <QSignalBlocker>
#include <algorithm>

#include "app/desktop/document/case_document.h"
#include "app/desktop/fields/limited_field.h"
#include "app/desktop/fields/wrapped_check.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

using practice::CautionKind;

QString text_of(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

bool is_present(const wound::Case& value, const std::string& id) {
  return std::ranges::find(value.cautions.present, id) != value.cautions.present.end();
}

/// The ids in the order of the table; those that it does not know stay at the end.
std::vector<std::string> in_table_order(const std::vector<std::string>& ids) {
  std::vector<std::string> ordered = ids;
  const auto rank = [](const std::string& id) {
    const auto all = practice::cautions();
    return std::ranges::find(all, id, &practice::Caution::id) - all.begin();
  };
  std::ranges::stable_sort(ordered, {}, rank);
  return ordered;
}

}  // namespace

CautionsPage::CautionsPage(CaseDocument& document, QWidget* parent)
    : Page(spoken("Cautions"), parent), document_(document) {
  add(quiet_text(
      spoken("Tick what is present. The list does not replace the prescriber, local policy or "
             "the device's instructions.")));
  add_kind(CautionKind::contraindication);
  add_kind(CautionKind::risk_factor);
  add_heading(spoken("When you are through"));
  add(reviewed_row());
  add_stretch();
  connect(&document, &CaseDocument::case_changed, this, &CautionsPage::show_case);
  show_case();
}

void CautionsPage::add_kind(CautionKind kind) {
  add_heading(kind == CautionKind::contraindication
                  ? spoken("Contraindications: present means stop")
                  : spoken("Risk factors: present means a warning"));
  for (const auto& caution : practice::cautions()) {
    if (caution.kind == kind) add(row_of(caution));
  }
}

QWidget* CautionsPage::row_of(const practice::Caution& caution) {
  auto* check = new WrappedCheck(spoken(caution.text), this);
  check->setToolTip(spoken(caution.advice) + "\n" +
                    spoken("Source: {1}", {practice::describe(caution.source)}));
  check->box().setObjectName(text_of(caution.id));
  check->box().setAccessibleDescription(check->toolTip());
  const std::string id(caution.id);
  connect(&check->box(), &QCheckBox::toggled, this,
          [this, id](bool present) { set_present(id, present); });
  rows_.push_back({id, &check->box()});
  return check;
}

QWidget* CautionsPage::reviewed_row() {
  auto* check = new WrappedCheck(spoken("I have gone through the whole list"), this);
  reviewed_ = &check->box();
  reviewed_->setObjectName("cautions_reviewed");
  connect(reviewed_, &QCheckBox::toggled, this, [this](bool reviewed) {
    document_.edit(reviewed ? spoken("cautions gone through") : spoken("cautions not gone through"),
                   {}, [&](wound::Case& value) { value.cautions.reviewed = reviewed; });
  });
  return check;
}

void CautionsPage::set_present(const std::string& id, bool present) {
  const auto* caution = practice::find_caution(id);
  document_.edit(spoken("caution: {1}", {spoken(caution->text)}), {}, [&](wound::Case& value) {
    auto& ids = value.cautions.present;
    std::erase(ids, id);
    if (present) ids.push_back(id);
    ids = in_table_order(ids);
  });
}

void CautionsPage::show_case() {
  const auto& value = document_.value();
  for (const auto& row : rows_) {
    const QSignalBlocker quiet(row.box);
    row.box->setChecked(is_present(value, row.id));
  }
  const QSignalBlocker quiet(reviewed_);
  reviewed_->setChecked(value.cautions.reviewed);
}

}  // namespace drapewright::desktop
