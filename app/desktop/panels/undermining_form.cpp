#include "app/desktop/panels/undermining_form.h"

#include <QVBoxLayout>
#include <array>
#include <utility>

#include "app/desktop/document/case_document.h"
#include "app/desktop/fields/limited_field.h"
#include "app/desktop/panels/rows_form.h"
#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/geometry/clock.h"

namespace drapewright::desktop {
namespace {

using wound::Tunnel;
using wound::Undermining;

QString clock_tip() {
  return spoken("Seen from the wound's middle: 12 is towards the patient's head.");
}

QString number(double value) { return QString::fromStdString(format_short(value, 2)); }

NumberColumn measured(const QString& title, std::string_view limit_id) {
  const practice::Limit& limit = practice::limit(limit_id);
  return {title, explanation_of(limit), range_of(limit)};
}

std::vector<NumberColumn> range_columns() {
  return {
      {spoken("from o'clock"),
       spoken("Where the range begins, going clockwise.") + " " + clock_tip(), clock_range()},
      {spoken("to o'clock"),
       spoken("Where it ends. It may pass 12: 10 to 2 is the four hours round 12."), clock_range()},
      measured(spoken("extent cm"), "undermining_extent_cm")};
}

std::vector<NumberColumn> tunnel_columns() {
  return {{spoken("o'clock"), spoken("Where the tunnel leaves the wound.") + " " + clock_tip(),
           clock_range()},
          measured(spoken("length cm"), "tunnel_length_cm"),
          {spoken("explored"),
           spoken("Whether its end was reached and seen. Nothing goes into a tunnel that was not."),
           {},
           true}};
}

double& number_in(Undermining& range, int column) {
  return *std::array{&range.from_clock, &range.to_clock,
                     &range.extent_cm}[static_cast<std::size_t>(column)];
}

void put_number(Tunnel& tunnel, int column, double value) {
  if (column == 0) tunnel.clock = value;
  if (column == 1) tunnel.length_cm = value;
  if (column == 2) tunnel.explored = value == 1;
}

QString in_words(const Undermining& range) {
  const double hours = geometry::clock_span(range.from_clock, range.to_clock);
  if (hours == 12) return spoken("All round, {1} cm under the edge.", {number(range.extent_cm)});
  const bool passes_12 = range.from_clock < 12 && range.from_clock + hours > 12;
  return spoken(
      passes_12 ? term("{1} to {2} o'clock, clockwise past 12: {3} h of the clock, {4} cm "
                       "under the edge.")
                : term("{1} to {2} o'clock, clockwise: {3} h of the clock, {4} cm under the "
                       "edge."),
      {number(range.from_clock), number(range.to_clock), number(hours), number(range.extent_cm)});
}

QString in_words(const Tunnel& tunnel) {
  return spoken("At {1} o'clock, {2} cm long; {3}",
                {number(tunnel.clock), number(tunnel.length_cm),
                 tunnel.explored ? spoken("explored: takes a strip of filler, counted as a piece.")
                                 : spoken("not explored: nothing goes in, and the plan stops.")});
}

template <class Item>
QStringList all_in_words(const std::vector<Item>& items) {
  QStringList all;
  for (const Item& item : items) all << in_words(item);
  return all;
}

template <class Item>
void remove_at(std::vector<Item>& items, int row) {
  items.erase(items.begin() + row);
}

}  // namespace

UnderminingForm::UnderminingForm(CaseDocument& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      ranges_(new RowsForm(
          {"undermining", spoken("Undermining"), spoken("undermined range"),
           spoken("None. Where a probe goes under the edge, type from, to and how far.")},
          range_columns(), this)),
      tunnels_(new RowsForm(
          {"tunnels", spoken("Tunnels"), spoken("tunnel"),
           spoken("None. Where a narrow passage leads away, type its hour and length.")},
          tunnel_columns(), this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(ranges_);
  column->addWidget(tunnels_);
  build_ranges();
  build_tunnels();
  connect(&document, &CaseDocument::case_changed, this, &UnderminingForm::show_case);
}

const wound::Wound* UnderminingForm::shown() const {
  const auto& wounds = document_.value().current().wounds;
  return wound_ && *wound_ < wounds.size() ? &wounds[*wound_] : nullptr;
}

template <class Alter>
void UnderminingForm::edit(const QString& text, Alter&& alter) {
  if (shown() == nullptr) return;
  document_.edit(text, {}, [&](wound::Case& value) { alter(value.current().wounds[*wound_]); });
}

void UnderminingForm::build_ranges() {
  connect(ranges_, &RowsForm::number_typed, this, [this](int row, int column, double value) {
    edit(spoken("undermining"), [&](wound::Wound& wound) {
      number_in(wound.undermining.at(static_cast<std::size_t>(row)), column) = value;
    });
  });
  connect(ranges_, &RowsForm::row_typed, this, [this](const NumberRows::Row& row) {
    edit(spoken("add undermining"), [&](wound::Wound& wound) {
      wound.undermining.push_back({row[0], row[1], row[2], {}});
    });
  });
  connect(ranges_, &RowsForm::row_removed, this, [this](int row) {
    edit(spoken("remove undermining"),
         [&](wound::Wound& wound) { remove_at(wound.undermining, row); });
  });
  connect(ranges_, &RowsForm::row_chosen, this,
          [this](int row) { emit range_chosen(wound_.value_or(0), shown() ? row : -1); });
}

void UnderminingForm::build_tunnels() {
  connect(tunnels_, &RowsForm::number_typed, this, [this](int row, int column, double value) {
    edit(spoken("tunnel"), [&](wound::Wound& wound) {
      put_number(wound.tunnels.at(static_cast<std::size_t>(row)), column, value);
    });
  });
  connect(tunnels_, &RowsForm::row_typed, this, [this](const NumberRows::Row& row) {
    edit(spoken("add tunnel"), [&](wound::Wound& wound) {
      wound.tunnels.push_back({row[0], row[1], row[2] == 1, {}});
    });
  });
  connect(tunnels_, &RowsForm::row_removed, this, [this](int row) {
    edit(spoken("remove tunnel"), [&](wound::Wound& wound) { remove_at(wound.tunnels, row); });
  });
  connect(tunnels_, &RowsForm::row_chosen, this,
          [this](int row) { emit tunnel_chosen(wound_.value_or(0), shown() ? row : -1); });
}

void UnderminingForm::set_wound(std::optional<std::size_t> wound) {
  if (wound == wound_) return;
  wound_ = wound;
  ranges_->start_over();
  tunnels_->start_over();
  show_case();
}

void UnderminingForm::show_case() {
  const wound::Wound* wound = shown();
  if (wound == nullptr) return;
  std::vector<NumberRows::Row> ranges, tunnels;
  for (const auto& one : wound->undermining) {
    ranges.push_back({one.from_clock, one.to_clock, one.extent_cm});
  }
  for (const auto& one : wound->tunnels) {
    tunnels.push_back({one.clock, one.length_cm, one.explored ? 1.0 : 0.0});
  }
  ranges_->show_rows(std::move(ranges), all_in_words(wound->undermining));
  tunnels_->show_rows(std::move(tunnels), all_in_words(wound->tunnels));
}

}  // namespace drapewright::desktop
