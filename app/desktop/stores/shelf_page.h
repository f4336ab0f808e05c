#pragma once

#include <QWidget>

#include "app/desktop/stores/shelf_job.h"
#include "app/desktop/stores/shelf_tables.h"

class QCheckBox;
class QLabel;
class QPushButton;

namespace drapewright::desktop {

class BookingForm;
class ShelfPlaceForm;
class SortedTable;

/// The shelf in its database: what lies there, booking, the log. Opened without set-up; where it is
/// kept can be changed.
class ShelfPage : public QWidget {
  Q_OBJECT

 public:
  /// @param today  day number
  explicit ShelfPage(int today, QWidget* parent = nullptr);

  /// A page that is left open over midnight. @param today  day number
  void set_today(int today);
  /// Opens the shelf where it was kept last.
  void open();
  const forecast::Shelf& shelf() const { return view_->shelf; }
  bool is_busy() const { return job_.is_busy(); }
  bool is_forecast_from() const;  ///< whether the forecast is to use this shelf
  void set_forecast_from(bool on);
  /// Puts a stock list in the place of what is on the shelf.
  /// @return what is wrong with the list; empty when it is on its way to the database
  QString import_list(const QString& file);

 signals:
  /// What lies there is no longer what it was, or whether the forecast uses it.
  void changed();
  void shown_view();

 private:
  QWidget* row_of_buttons();
  QWidget* build_tables();
  void build_empty_hint();
  void open_at(const ShelfPlace& place);
  void request(const ShelfJob::Action& action, const QString& done);
  void take(const std::shared_ptr<const ShelfView>& view);
  void tell(const QString& text, bool warn);
  void ask_import();
  void ask_export();
  void replace(const forecast::Shelf& shelf, const QString& reason, const QString& done);
  void set_busy(bool busy);

  int today_;
  ShelfPlace place_;
  ShelfJob job_;
  std::shared_ptr<const ShelfView> view_ = std::make_shared<ShelfView>();
  std::vector<ShelfRows::Row> rows_;
  QString done_;  ///< told when the request that runs went well

  QLabel* where_;
  QLabel* told_;
  QCheckBox* forecast_;
  QWidget* buttons_;
  QWidget* empty_;
  ShelfPlaceForm* place_form_;
  BookingForm* booking_;
  SortedTable* lots_;
  SortedTable* log_;
};

}  // namespace drapewright::desktop
