#include "app/desktop/stores/booking_form.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/desktop/fields/limited_field.h"
#include "app/wording/spoken.h"
#include "core/supplies/stock_item.h"

namespace drapewright::desktop {
namespace {

constexpr int least_height = 26;
constexpr int longest_note = 200;
constexpr const char* who_key = "shelf_booked_by";

QString name_on_this_computer() {
  return qEnvironmentVariable("USER", qEnvironmentVariable("USERNAME"));
}

}  // namespace

BookingForm::BookingForm(int today, QWidget* parent)
    : QWidget(parent),
      items_(new QComboBox(this)),
      parts_(new QTabWidget(this)),
      note_(new QLineEdit(this)),
      who_(new QLineEdit(this)),
      objection_(quiet_text({}, this)),
      book_(new QPushButton(spoken("Boo&k"), this)) {
  items_->setObjectName("booking_item");
  parts_->setObjectName("booking_parts");
  note_->setObjectName("booking_note");
  who_->setObjectName("booking_who");
  objection_->setObjectName("booking_objection");
  book_->setObjectName("booking_book");
  items_->setAccessibleName(spoken("Item"));
  items_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  note_->setMaxLength(longest_note);
  note_->setPlaceholderText(spoken("Ward or reason, no patient's name"));
  who_->setText(QSettings().value(who_key, name_on_this_computer()).toString());
  add(new TakePart(today, this), spoken("Take out"));
  add(new ReceivePart(today, this), spoken("Receive"));
  add(new CountPart(today, this), spoken("Count"));
  add(new OrderPart(today, this), spoken("Order"));
  auto* line = new QFormLayout;
  line->addRow(spoken("&Note"), note_);
  line->addRow(spoken("Booked b&y"), who_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(4, 0, 0, 0);
  for (QWidget* each : std::initializer_list<QWidget*>{items_, parts_}) column->addWidget(each);
  column->addLayout(line);
  column->addWidget(objection_);
  column->addWidget(book_);
  column->addStretch(1);
  for (QWidget* each : std::initializer_list<QWidget*>{items_, note_, who_, book_}) {
    each->setMinimumHeight(least_height);
  }
  connect(items_, &QComboBox::currentIndexChanged, this, &BookingForm::show_item);
  connect(parts_, &QTabWidget::currentChanged, this, &BookingForm::tell);
  connect(book_, &QPushButton::clicked, this, &BookingForm::book);
  connect(who_, &QLineEdit::textChanged, this, &BookingForm::tell);
  connect(note_, &QLineEdit::returnPressed, book_, &QPushButton::click);
  connect(who_, &QLineEdit::editingFinished, this,
          [this] { QSettings().setValue(who_key, who()); });
  show_item();
}

void BookingForm::add(BookingPart* part, const QString& title) {
  parts_->addTab(part, title);
  connect(part, &BookingPart::changed, this, &BookingForm::tell);
}

BookingPart& BookingForm::part() const {
  return dynamic_cast<BookingPart&>(*parts_->currentWidget());
}

const forecast::ShelfItem* BookingForm::item() const {
  const auto index = static_cast<std::size_t>(std::max(0, items_->currentIndex()));
  return index < shelf_.size() ? &shelf_[index] : nullptr;
}

void BookingForm::set_today(int today) {
  for (int i = 0; i < parts_->count(); ++i) {
    dynamic_cast<BookingPart&>(*parts_->widget(i)).set_today(today);
  }
  show_item();
}

QString BookingForm::who() const { return who_->text().trimmed(); }

void BookingForm::show_shelf(const forecast::Shelf& shelf) {
  const auto* before = item();
  const std::string chosen = before != nullptr ? before->item : std::string();
  shelf_ = shelf;
  {
    const QSignalBlocker quiet(items_);
    items_->clear();
    for (const auto& each : shelf_) {
      items_->addItem(QString::fromStdString(supplies::shown_name(each.item)));
    }
    const auto found = std::ranges::find(shelf_, chosen, &forecast::ShelfItem::item);
    if (found != shelf_.end()) items_->setCurrentIndex(static_cast<int>(found - shelf_.begin()));
  }
  show_item();
}

void BookingForm::show_row(const ShelfRows::Row& row) {
  items_->setCurrentIndex(static_cast<int>(row.item));
  for (int i = 0; i < parts_->count(); ++i) {
    dynamic_cast<BookingPart&>(*parts_->widget(i)).show_row(row);
  }
}

void BookingForm::show_item() {
  for (int i = 0; i < parts_->count(); ++i) {
    dynamic_cast<BookingPart&>(*parts_->widget(i)).show_item(item());
  }
  tell();
}

void BookingForm::tell() {
  QString objection = part().objection();
  if (objection.isEmpty() && who().isEmpty()) objection = spoken("Say who books it.");
  objection_->setText(objection);
  objection_->setVisible(!objection.isEmpty());
  book_->setEnabled(objection.isEmpty());
}

void BookingForm::book() {
  emit booked(part().booking(note_->text().trimmed()), part().done());
  note_->clear();
}

}  // namespace drapewright::desktop
