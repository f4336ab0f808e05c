#pragma once

#include <QString>

namespace drapewright::desktop {

/// Where a shelf is kept: a file, or a database on a PostgreSQL server that several stores share.
struct ShelfPlace {
  QString file;  ///< of SQLite; empty: a server
  QString host;  ///< a name, or the folder of a local socket
  int port = 5432;
  QString database;
  QString user;
  /// Typed in and kept in memory alone: no setting, file or address has it. Empty: the server's own
  /// client finds one (its password file or its environment) where one is needed.
  QString password;

  bool is_server() const { return file.isEmpty(); }
};

/// A path is a file; `postgresql://user@host:port/database` is a server.
/// @throws InputError for an address of a server that is not complete, or has a password in it
ShelfPlace shelf_place(const QString& setting);

/// The other way round; never with the password.
QString address_of(const ShelfPlace& place);

/// The file that a shelf is kept in where nothing else was chosen: in the user's own data folder.
QString usual_shelf_file();

// The one setting.
/// What was chosen last, else the usual file. @throws InputError as shelf_place()
ShelfPlace kept_shelf_place();
void keep_shelf_place(const ShelfPlace& place);

}  // namespace drapewright::desktop
