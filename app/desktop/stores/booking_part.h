#pragma once

#include <QWidget>

#include "app/desktop/stores/shelf_job.h"
#include "app/desktop/stores/shelf_tables.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QSpinBox;

namespace drapewright::desktop {

/// One way to book an item of the shelf: what is asked for, and what would be done.
class BookingPart : public QWidget {
  Q_OBJECT

 public:
  /// @param today  day number
  explicit BookingPart(int today, QWidget* parent = nullptr) : QWidget(parent), today_(today) {}

  /// To be followed by show_item().
  void set_today(int today) { today_ = today; }
  /// @param item  none: nothing can be booked
  void show_item(const forecast::ShelfItem* item);
  /// A row of that item was chosen in the shelf's table.
  virtual void show_row(const ShelfRows::Row&) {}
  /// Why it cannot be booked as it stands; empty: it can.
  QString objection() const;
  /// @pre there is no objection; so for done()
  virtual ShelfJob::Action booking(const QString& note) const = 0;
  /// What is done, to be told once it is booked.
  virtual QString done() const = 0;

 signals:
  void changed();

 protected:
  int today() const { return today_; }
  const forecast::ShelfItem& item() const { return item_; }
  /// Another item is to be booked.
  virtual void item_shown() = 0;
  /// The same as objection(), of an item that was chosen.
  virtual QString own_objection() const = 0;

 private:
  int today_;
  forecast::ShelfItem item_;
};

/// Pieces off the shelf, first expired first out; tells from which lots before it is booked.
class TakePart : public BookingPart {
  Q_OBJECT

 public:
  explicit TakePart(int today, QWidget* parent = nullptr);

  void item_shown() override;
  QString own_objection() const override;
  ShelfJob::Action booking(const QString& note) const override;
  QString done() const override;

 private:
  void tell();

  int there_ = 0;  ///< in date
  QSpinBox* pieces_;
  QLabel* from_;
};

/// A delivery that came, whole or in part, or pieces that were not on order.
class ReceivePart : public BookingPart {
  Q_OBJECT

 public:
  explicit ReceivePart(int today, QWidget* parent = nullptr);

  void item_shown() override;
  void show_row(const ShelfRows::Row& row) override;
  QString own_objection() const override;
  ShelfJob::Action booking(const QString& note) const override;
  QString done() const override;

 private:
  const forecast::Delivery* expected() const;
  forecast::Lot came() const;
  void fill_in();

  QComboBox* delivery_;
  QSpinBox* pieces_;
  QLineEdit* lot_;
  QLineEdit* expires_;
  QCheckBox* undated_;
};

/// Pieces that were ordered: the forecast counts on them from the day on which they are due.
class OrderPart : public BookingPart {
  Q_OBJECT

 public:
  explicit OrderPart(int today, QWidget* parent = nullptr);

  void item_shown() override;
  QString own_objection() const override;
  ShelfJob::Action booking(const QString& note) const override;
  QString done() const override;

 private:
  std::optional<int> due() const;

  QSpinBox* pieces_;
  QLineEdit* due_;
};

/// What lies there of a lot, counted.
class CountPart : public BookingPart {
  Q_OBJECT

 public:
  explicit CountPart(int today, QWidget* parent = nullptr);

  void item_shown() override;
  void show_row(const ShelfRows::Row& row) override;
  QString own_objection() const override;
  ShelfJob::Action booking(const QString& note) const override;
  QString done() const override;

 private:
  const forecast::Lot* lot() const;
  void fill_in();

  QComboBox* lots_;
  QSpinBox* counted_;
};

}  // namespace drapewright::desktop
