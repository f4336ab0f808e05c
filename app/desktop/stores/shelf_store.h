#pragma once

#include <QSqlDatabase>
#include <QString>
#include <QVariant>
#include <optional>
#include <vector>

#include "app/desktop/stores/shelf_place.h"
#include "core/forecast/stock.h"

namespace drapewright::desktop {

/// One line of the shelf's log. What was counted in has a quantity above 0, what was taken below.
struct Booking {
  QString at;  ///< YYYY-MM-DD HH:MM:SS, UTC
  QString who;
  QString item;
  QString lot;
  int quantity = 0;
  QString reason;
};

/// Which lots a number of pieces comes from: first expired first, what has no date last; what is
/// past its date on `today` (day number) stays. Fewer than `quantity` where there are not so many.
std::vector<forecast::Lot> first_expired(std::vector<forecast::Lot> lots, int quantity, int today);

/// A shelf and its log in a database. Every change is one transaction with its line in the log:
/// after a killed process either both are there or neither is. Several may book at once; nothing is
/// lost, and no lot goes below 0. One thread only.
class ShelfStore {
 public:
  /// Opens the shelf and makes its tables where they are not there yet.
  /// @param who  for the log
  /// @throws InputError with the database's own words; so does everything below
  ShelfStore(const ShelfPlace& place, QString who);
  ~ShelfStore();
  Q_DISABLE_COPY_MOVE(ShelfStore)

  forecast::Shelf load();
  /// Puts a counted stock list in the place of what was there.
  void replace(const forecast::Shelf& shelf, const QString& reason);
  /// Takes pieces off, first expired first; what is past its date on `today` (day number) stays.
  /// All or none. @throws InputError also where there are not so many
  void take(const QString& item, int quantity, int today, const QString& reason);
  /// Puts pieces on the shelf.
  void add(const QString& item, const forecast::Lot& lot, const QString& reason);
  /// Puts pieces on order. The log has it with a quantity of 0: nothing lies there yet.
  void order(const QString& item, const forecast::Delivery& delivery, const QString& reason);
  /// Puts what came of a delivery on the shelf; what did not come stays on order.
  /// @throws InputError also where the delivery is no longer on order: somebody received it
  void receive(const QString& item, const forecast::Delivery& expected, const forecast::Lot& came,
               const QString& reason);
  /// One lot was counted. @param seen  with the quantity that the counter was shown
  /// @throws InputError also where somebody booked since: then it is to be counted again
  void count(const QString& item, const forecast::Lot& seen, int counted, const QString& reason);
  /// The latest first.
  std::vector<Booking> log(int most);

 private:
  class Transaction;
  QSqlQuery run(const QString& sql, const QVariantList& values = {});
  void make_tables();
  void expect_item(const QString& item);
  void put(const QString& item, const forecast::Lot& lot, const QString& reason);
  void write_item(const forecast::ShelfItem& item, const QString& reason);
  void write_log(const QString& item, const QString& lot, int quantity, const QString& reason);
  bool is_server() const { return server_; }

  QString connection_;
  QString who_;
  bool server_;
};

}  // namespace drapewright::desktop
