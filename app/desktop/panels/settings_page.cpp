#include "app/desktop/panels/settings_page.h"

#include <QCheckBox>
#include <span>

#include "app/desktop/document/case_document.h"
#include "app/desktop/fields/limited_field.h"
#include "app/desktop/fields/wrapped_check.h"
#include "app/desktop/panels/port_place_row.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

using Settings = wound::DressingSettings;

struct Setting {
  const char* id;
  double Settings::*member;
  int decimals;
  double step;
};

constexpr Setting filler[] = {{"inset_cm", &Settings::inset_cm, 2, 0.1},
                              {"filler_thickness_cm", &Settings::filler_thickness_cm, 2, 0.5},
                              {"piece_gap_cm", &Settings::piece_gap_cm, 2, 0.1}};
constexpr Setting film[] = {{"border_cm", &Settings::border_cm, 2, 0.5},
                            {"film_overlap_cm", &Settings::film_overlap_cm, 2, 0.5}};
constexpr Setting port[] = {{"aperture_diameter_cm", &Settings::aperture_diameter_cm, 2, 0.1},
                            {"port_base_diameter_cm", &Settings::port_base_diameter_cm, 2, 0.5},
                            {"bridge_width_cm", &Settings::bridge_width_cm, 2, 0.5}};
constexpr Setting course[] = {{"change_every_h", &Settings::change_every_h, 1, 12},
                              {"course_days", &Settings::course_days, 1, 1},
                              {"pressure_mmhg", &Settings::pressure_mmhg, 0, 5},
                              {"canister_ml", &Settings::canister_ml, 0, 50},
                              {"canister_max_days", &Settings::canister_max_days, 1, 1},
                              {"battery_days", &Settings::battery_days, 1, 1}};
constexpr Setting drawing[] = {{"tracing_error_mm", &Settings::tracing_error_mm, 2, 0.5}};

struct Group {
  const char* title;
  std::span<const Setting> settings;
};
const Group groups[] = {{term("Filler"), filler},
                        {term("Film"), film},
                        {term("Port"), port},
                        {term("Course"), course},
                        {term("Drawing"), drawing}};

}  // namespace

SettingsPage::SettingsPage(CaseDocument& document, QWidget* parent)
    : Page(spoken("Dressing"), parent), document_(document) {
  for (const auto& group : groups) {
    add_heading(spoken(group.title));
    for (const auto& setting : group.settings) {
      add_setting(setting.id, setting.member, setting.decimals, setting.step);
    }
    if (group.settings.data() == port) {
      add(bridge_row());
      add(new PortPlaceRow(document, this));
    }
  }
  add_stretch();
  connect(&document, &CaseDocument::case_changed, this, &SettingsPage::show_case);
  show_case();
}

void SettingsPage::add_setting(std::string_view id, double Settings::*member, int decimals,
                               double step) {
  const practice::Limit& limit = practice::limit(id);
  auto* field = new LimitedField(limit, {.decimals = decimals, .step = step}, this);
  const QString name = spoken(limit.title);
  connect(&field->field(), &NumberField::entered, this,
          [this, member, name](std::optional<double> entered) {
            if (!entered) return;
            document_.edit(name.toLower(), name,
                           [&](wound::Case& value) { value.dressing.*member = *entered; });
          });
  connect(&field->field(), &NumberField::left, this, [this] { document_.end_stretch(); });
  entries_.push_back({field, member});
  add(field);
}

QWidget* SettingsPage::bridge_row() {
  auto* check = new WrappedCheck(spoken("Lead a bridge to the port"), this);
  check->setToolTip(spoken(
      "The port sits on a strip of filler beside the wound, even where it could sit on the wound. "
      "The strip lies over film and counts as a piece."));
  bridge_ = &check->box();
  bridge_->setObjectName("bridge_wanted");
  bridge_->setAccessibleDescription(check->toolTip());
  connect(bridge_, &QCheckBox::toggled, this, [this](bool wanted) {
    document_.edit(wanted ? spoken("bridge to the port") : spoken("no bridge to the port"), {},
                   [&](wound::Case& value) { value.dressing.bridge_wanted = wanted; });
  });
  return check;
}

void SettingsPage::show_case() {
  const QSignalBlocker quiet(bridge_);
  bridge_->setChecked(document_.value().dressing.bridge_wanted);
  for (const auto& entry : entries_) {
    entry.field->show_number(document_.value().dressing.*entry.member);
  }
}

}  // namespace drapewright::desktop
