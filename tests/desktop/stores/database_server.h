#pragma once

#include <QProcess>
#include <QString>
#include <QTemporaryDir>

namespace drapewright::desktop_test {

/// A PostgreSQL server of a test's own, in a folder that is thrown away, reached through a socket
/// in that folder and not from any other machine. It ends with this object.
class DatabaseServer {
 public:
  DatabaseServer();
  ~DatabaseServer();
  Q_DISABLE_COPY_MOVE(DatabaseServer)

  /// Why it does not run: not installed, no driver, what it said. Empty: it runs.
  const QString& why_not() const { return why_not_; }
  /// A shelf in a database of that name, which is made; empty where why_not() then says why not.
  QString shelf(const QString& database);
  /// The same for a user who has to give a password. @param user  not made yet; so the database
  QString guarded_shelf(const QString& database, const QString& user, const QString& password);

 private:
  void wait_until_ready();
  bool run(const QString& program, const QStringList& arguments);
  QString address(const QString& user, const QString& database) const;
  QStringList as_its_user(const QStringList& command) const;
  QString programs() const;

  QTemporaryDir folder_;
  QProcess server_;
  QString user_;
  QString why_not_;
};

}  // namespace drapewright::desktop_test
