#pragma once

#include <QWidget>

#include "app/desktop/stores/booking_part.h"

class QLineEdit;
class QPushButton;
class QTabWidget;

namespace drapewright::desktop {

/// Take out, receive, count, order: one item at a time, with a note for the log.
class BookingForm : public QWidget {
  Q_OBJECT

 public:
  /// @param today  day number
  explicit BookingForm(int today, QWidget* parent = nullptr);

  /// The item that was chosen stays chosen where the shelf still has it.
  void show_shelf(const forecast::Shelf& shelf);
  void show_row(const ShelfRows::Row& row);
  void set_today(int today);
  QString who() const;

 signals:
  /// @param done  in words, to be told when it went well
  void booked(const drapewright::desktop::ShelfJob::Action& action, const QString& done);

 private:
  void add(BookingPart* part, const QString& title);
  BookingPart& part() const;
  const forecast::ShelfItem* item() const;
  void show_item();
  void tell();
  void book();

  forecast::Shelf shelf_;
  QComboBox* items_;
  QTabWidget* parts_;
  QLineEdit* note_;
  QLineEdit* who_;
  QLabel* objection_;
  QPushButton* book_;
};

}  // namespace drapewright::desktop
