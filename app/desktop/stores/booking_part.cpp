#include "app/desktop/stores/booking_part.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QSpinBox>
#include <cmath>
#include <numeric>

#include "app/desktop/fields/limited_field.h"
#include "app/wording/spoken.h"
#include "core/base/calendar.h"
#include "core/supplies/stock_item.h"

namespace drapewright::desktop {
namespace {

using forecast::Delivery;
using forecast::Lot;
using forecast::ShelfItem;

constexpr int most_pieces = 100000;
constexpr int least_height = 26;

QString words(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

int total(const std::vector<Lot>& lots) {
  return std::accumulate(lots.begin(), lots.end(), 0,
                         [](int sum, const Lot& lot) { return sum + lot.quantity; });
}

template <class Field>
Field* named(Field* field, const char* name) {
  field->setObjectName(name);
  field->setMinimumHeight(least_height);
  return field;
}

QSpinBox* pieces_field(const char* name, int least, QWidget* parent) {
  auto* field = named(new QSpinBox(parent), name);
  field->setRange(least, most_pieces);
  return field;
}

QFormLayout* form_of(QWidget& part) {
  auto* form = new QFormLayout(&part);
  form->setContentsMargins(6, 6, 6, 4);
  form->setVerticalSpacing(4);
  form->setRowWrapPolicy(QFormLayout::WrapLongRows);
  return form;
}

QString pieces_of(int count, const ShelfItem& item) {
  return spoken("{1} of {2}",
                {count_of(count, "piece", "pieces"), supplies::shown_name(item.item)});
}

}  // namespace

void BookingPart::show_item(const ShelfItem* item) {
  item_ = item != nullptr ? *item : ShelfItem{};
  item_shown();
}

QString BookingPart::objection() const {
  return item_.item.empty() ? spoken("Choose an item.") : own_objection();
}

TakePart::TakePart(int today, QWidget* parent)
    : BookingPart(today, parent),
      pieces_(pieces_field("take_pieces", 1, this)),
      from_(quiet_text({}, this)) {
  from_->setObjectName("take_from");
  auto* form = form_of(*this);
  form->addRow(spoken("&Pieces"), pieces_);
  form->addRow(from_);
  connect(pieces_, &QSpinBox::valueChanged, this, &TakePart::tell);
}

void TakePart::item_shown() {
  there_ = total(first_expired(item().lots, most_pieces, today()));
  tell();
}

void TakePart::tell() {
  QStringList parts;
  for (const Lot& lot : first_expired(item().lots, pieces_->value(), today())) {
    parts << spoken("{1} of {2}", {lot.quantity, lot_in_words(lot)});
  }
  from_->setText(parts.isEmpty() ? QString()
                                 : spoken("First expired first out: {1}.", {parts.join("; ")}));
  emit changed();
}

QString TakePart::own_objection() const {
  if (pieces_->value() <= there_) return {};
  return spoken("Only {1} on the shelf and in date.", {there_});
}

ShelfJob::Action TakePart::booking(const QString& note) const {
  return [item = words(item().item), pieces = pieces_->value(), day = today(),
          note](ShelfStore& store) { store.take(item, pieces, day, note); };
}

QString TakePart::done() const {
  return spoken("Taken out: {1}.", {pieces_of(pieces_->value(), item())});
}

ReceivePart::ReceivePart(int today, QWidget* parent)
    : BookingPart(today, parent),
      delivery_(named(new QComboBox(this), "receive_delivery")),
      pieces_(pieces_field("receive_pieces", 1, this)),
      lot_(named(new QLineEdit(this), "receive_lot")),
      expires_(named(new QLineEdit(this), "receive_expires")),
      undated_(new QCheckBox(spoken("No d&ate on it"), this)) {
  undated_->setObjectName("receive_undated");
  expires_->setPlaceholderText(spoken("YYYY-MM-DD"));
  auto* form = form_of(*this);
  form->addRow(spoken("&Delivery"), delivery_);
  form->addRow(spoken("&Pieces"), pieces_);
  form->addRow(spoken("Lo&t"), lot_);
  form->addRow(spoken("&Use by"), expires_);
  form->addRow(undated_);
  connect(undated_, &QCheckBox::toggled, expires_, &QWidget::setDisabled);
  connect(undated_, &QCheckBox::toggled, this, &BookingPart::changed);
  connect(expires_, &QLineEdit::textChanged, this, &BookingPart::changed);
  connect(delivery_, &QComboBox::currentIndexChanged, this, &ReceivePart::fill_in);
}

void ReceivePart::item_shown() {
  const QSignalBlocker quiet(delivery_);
  delivery_->clear();
  for (const Delivery& delivery : item().deliveries) {
    delivery_->addItem(spoken("due {1}: {2}", {date_of_day(delivery.due),
                                               count_of(delivery.quantity, "piece", "pieces")}));
  }
  delivery_->addItem(spoken("not on order"));
  lot_->clear();
  fill_in();
}

void ReceivePart::show_row(const ShelfRows::Row& row) {
  if (!row.delivery) return;
  const auto found = std::ranges::find(item().deliveries, *row.delivery);
  if (found != item().deliveries.end()) {
    delivery_->setCurrentIndex(static_cast<int>(found - item().deliveries.begin()));
  }
}

const Delivery* ReceivePart::expected() const {
  const auto index = static_cast<std::size_t>(std::max(0, delivery_->currentIndex()));
  return index < item().deliveries.size() ? &item().deliveries[index] : nullptr;
}

void ReceivePart::fill_in() {
  const Delivery* delivery = expected();
  pieces_->setValue(delivery != nullptr ? delivery->quantity : item().pack_size);
  // A date that nobody has read off the package is not made up.
  expires_->setText(delivery != nullptr && delivery->expires
                        ? words(date_of_day(*delivery->expires))
                        : QString());
  emit changed();
}

Lot ReceivePart::came() const {
  Lot lot{
      .quantity = pieces_->value(), .expires = {}, .name = lot_->text().trimmed().toStdString()};
  if (!undated_->isChecked()) lot.expires = day_number(expires_->text().trimmed().toStdString());
  return lot;
}

QString ReceivePart::own_objection() const {
  if (undated_->isChecked()) return {};
  if (expires_->text().trimmed().isEmpty()) {
    return spoken("Type the date on the package, or tick that it has none.");
  }
  const auto expires = came().expires;
  if (!expires) return spoken("The date is written as 2027-03-31.");
  return *expires < today() ? spoken("It is past its date already.") : QString();
}

ShelfJob::Action ReceivePart::booking(const QString& note) const {
  const QString name = words(item().item);
  if (const Delivery* delivery = expected()) {
    return [name, expected = *delivery, lot = came(), note](ShelfStore& store) {
      store.receive(name, expected, lot, note);
    };
  }
  return [name, lot = came(), note](ShelfStore& store) { store.add(name, lot, note); };
}

QString ReceivePart::done() const {
  return spoken("Received: {1}.", {pieces_of(pieces_->value(), item())});
}

OrderPart::OrderPart(int today, QWidget* parent)
    : BookingPart(today, parent),
      pieces_(pieces_field("order_pieces", 1, this)),
      due_(named(new QLineEdit(this), "order_due")) {
  due_->setPlaceholderText(spoken("YYYY-MM-DD"));
  auto* form = form_of(*this);
  form->addRow(spoken("&Pieces"), pieces_);
  form->addRow(spoken("&Due"), due_);
  connect(due_, &QLineEdit::textChanged, this, &BookingPart::changed);
}

/// As much as a pack holds, due after the lead time: to be corrected by what the supplier says.
void OrderPart::item_shown() {
  pieces_->setValue(item().pack_size);
  due_->setText(words(date_of_day(today() + static_cast<int>(std::ceil(item().lead_days)))));
  emit changed();
}

std::optional<int> OrderPart::due() const {
  return day_number(due_->text().trimmed().toStdString());
}

QString OrderPart::own_objection() const {
  if (!due()) return spoken("The date is written as 2027-03-31.");
  return *due() < today() ? spoken("That day is over.") : QString();
}

ShelfJob::Action OrderPart::booking(const QString& note) const {
  const Delivery delivery{.due = *due(), .quantity = pieces_->value(), .expires = {}};
  const QString ordered =
      spoken("on order: {1}, due {2}", {delivery.quantity, date_of_day(*due())});
  return [item = words(item().item), delivery,
          reason = note.isEmpty() ? ordered : ordered + "; " + note](ShelfStore& store) {
    store.order(item, delivery, reason);
  };
}

QString OrderPart::done() const {
  return spoken("On order: {1}, due {2}.",
                {pieces_of(pieces_->value(), item()), date_of_day(*due())});
}

CountPart::CountPart(int today, QWidget* parent)
    : BookingPart(today, parent),
      lots_(named(new QComboBox(this), "count_lot")),
      counted_(pieces_field("count_pieces", 0, this)) {
  auto* form = form_of(*this);
  form->addRow(spoken("Lo&t"), lots_);
  form->addRow(spoken("&Counted"), counted_);
  connect(lots_, &QComboBox::currentIndexChanged, this, &CountPart::fill_in);
}

void CountPart::item_shown() {
  const QSignalBlocker quiet(lots_);
  lots_->clear();
  for (const Lot& lot : item().lots) {
    lots_->addItem(spoken("{1}: {2} in the book", {lot_in_words(lot), lot.quantity}));
  }
  fill_in();
}

void CountPart::show_row(const ShelfRows::Row& row) {
  if (!row.lot) return;
  const auto found = std::ranges::find(item().lots, *row.lot);
  if (found != item().lots.end()) {
    lots_->setCurrentIndex(static_cast<int>(found - item().lots.begin()));
  }
}

const Lot* CountPart::lot() const {
  const int index = lots_->currentIndex();
  return index < 0 ? nullptr : &item().lots[static_cast<std::size_t>(index)];
}

void CountPart::fill_in() {
  counted_->setValue(lot() != nullptr ? lot()->quantity : 0);
  emit changed();
}

QString CountPart::own_objection() const {
  return lot() == nullptr ? spoken("There is no lot of it: receive it first.") : QString();
}

ShelfJob::Action CountPart::booking(const QString& note) const {
  return [item = words(item().item), seen = *lot(), counted = counted_->value(),
          note](ShelfStore& store) { store.count(item, seen, counted, note); };
}

QString CountPart::done() const {
  return spoken("Counted: {1}, {2}.", {pieces_of(counted_->value(), item()), lot_in_words(*lot())});
}

}  // namespace drapewright::desktop
