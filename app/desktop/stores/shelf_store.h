#pragma once

#include <QSqlDatabase>
#include <QString>
#include <QVariant>
#include <optional>
#include <vector>

#include "core/forecast/stock.h"

namespace drapewright::desktop {

/// Where a shelf is kept: a file, or a database on a PostgreSQL server that several stores share.
struct ShelfPlace {
  QString file;  ///< of SQLite; empty: a server
  QString host;  ///< a name, or the folder of a local socket
  int port = 5432;
  QString database;
  QString user;
};

/// A path is a file; `postgresql://user@host:port/database` is a server. A password never stands
/// there: the server's own client finds it (its password file or its environment).
/// @throws InputError for an address of a server that is not complete, or has a password in it
ShelfPlace shelf_place(const QString& setting);

/// One line of the shelf's log. What was counted in has a quantity above 0, what was taken below.
struct Booking {
  QString at;  ///< YYYY-MM-DD HH:MM:SS, UTC
  QString who;
  QString item;
  QString lot;
  int quantity = 0;
  QString reason;
};

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
  /// The latest first.
  std::vector<Booking> log(int most);

 private:
  class Transaction;
  QSqlQuery run(const QString& sql, const QVariantList& values = {});
  void make_tables();
  void write_item(const forecast::ShelfItem& item, const QString& reason);
  void write_log(const QString& item, const QString& lot, int quantity, const QString& reason);
  bool is_server() const { return server_; }

  QString connection_;
  QString who_;
  bool server_;
};

}  // namespace drapewright::desktop
