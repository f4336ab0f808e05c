#include "tests/desktop/stores/database_server.h"

#include <pwd.h>
#include <unistd.h>

#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QSqlDatabase>
#include <QThread>
#include <QUrl>

namespace drapewright::desktop_test {
namespace {

constexpr int patience_ms = 30000;

}  // namespace

DatabaseServer::DatabaseServer() {
  if (!QSqlDatabase::isDriverAvailable("QPSQL")) {
    why_not_ = "Qt's PostgreSQL driver (libqt6sql6-psql) is not installed";
    return;
  }
  if (programs().isEmpty()) {
    why_not_ = "no PostgreSQL server (postgresql) is installed";
    return;
  }
  // The server refuses to run as root: it gets the user that its package has made.
  if (::geteuid() == 0) {
    const passwd* own = ::getpwnam("postgres");
    if (own == nullptr) {
      why_not_ = "there is no user postgres to run the server as";
      return;
    }
    user_ = "postgres";
    if (::chown(QFile::encodeName(folder_.path()), own->pw_uid, own->pw_gid) != 0) {
      why_not_ = "the server's folder cannot be given to its user";
      return;
    }
  }
  const QString data = folder_.filePath("data");
  if (!run(programs() + "/initdb",
           {"-D", data, "-A", "trust", "-U", "shelf", "-N", "-E", "UTF8"})) {
    return;
  }
  // As little memory as it takes, and no port. It keeps its promises to the disk (fsync).
  const auto command = as_its_user({programs() + "/postgres", "-D", data, "-k", folder_.path(),
                                    "-c", "listen_addresses=", "-c", "shared_buffers=8MB"});
  server_.setStandardErrorFile(folder_.filePath("log"));
  server_.start(command.front(), command.mid(1));
  wait_until_ready();
}

void DatabaseServer::wait_until_ready() {
  // Its socket is there before it takes connections: only asking tells.
  QElapsedTimer waited;
  waited.start();
  while (!run(programs() + "/pg_isready", {"-q", "-h", folder_.path()})) {
    if (waited.elapsed() > patience_ms || server_.state() == QProcess::NotRunning) {
      why_not_ = "the server did not start";
      return;
    }
    QThread::msleep(50);
    server_.waitForFinished(1);
  }
  why_not_.clear();
}

DatabaseServer::~DatabaseServer() {
  if (server_.state() == QProcess::NotRunning) return;
  // Its own way to be stopped; a signal to the process that changed the user does not reach it.
  run(programs() + "/pg_ctl", {"-D", folder_.filePath("data"), "-m", "immediate", "stop"});
  server_.waitForFinished(patience_ms);
  run("rm", {"-rf", folder_.filePath("data")});
}

QString DatabaseServer::programs() const {
  const QDir versions("/usr/lib/postgresql");
  for (const QString& version : versions.entryList(QDir::Dirs | QDir::NoDotAndDotDot)) {
    const QString folder = versions.filePath(version + "/bin");
    if (QFile::exists(folder + "/initdb") && QFile::exists(folder + "/postgres")) return folder;
  }
  return {};
}

QStringList DatabaseServer::as_its_user(const QStringList& command) const {
  if (user_.isEmpty()) return command;
  return QStringList{"runuser", "-u", user_, "--"} + command;
}

bool DatabaseServer::run(const QString& program, const QStringList& arguments) {
  const auto command = as_its_user(QStringList{program} + arguments);
  QProcess process;
  process.setWorkingDirectory(folder_.path());
  process.start(command.front(), command.mid(1));
  if (process.waitForFinished(patience_ms) && process.exitCode() == 0) return true;
  why_not_ = program + ": " + QString::fromUtf8(process.readAllStandardError()).trimmed();
  return false;
}

QString DatabaseServer::shelf(const QString& database) {
  if (!run(programs() + "/createdb", {"-h", folder_.path(), "-U", "shelf", database})) return {};
  return address("shelf", database);
}

QString DatabaseServer::guarded_shelf(const QString& database, const QString& user,
                                      const QString& password) {
  const QStringList here{"-h", folder_.path(), "-U", "shelf"};
  const QString role = QString("CREATE ROLE %1 LOGIN PASSWORD '%2'").arg(user, password);
  // The first line that fits decides who may come in how.
  const QString guard = QString("sed -i '1i local all %1 scram-sha-256' %2/data/pg_hba.conf")
                            .arg(user, folder_.path());
  if (!run(programs() + "/psql", here + QStringList{"-d", "postgres", "-c", role}) ||
      !run(programs() + "/createdb", here + QStringList{"-O", user, database}) ||
      !run("sh", {"-c", guard}) ||
      !run(programs() + "/pg_ctl", {"-D", folder_.filePath("data"), "reload"})) {
    return {};
  }
  return address(user, database);
}

QString DatabaseServer::address(const QString& user, const QString& database) const {
  const auto socket = QString::fromUtf8(QUrl::toPercentEncoding(folder_.path()));
  return "postgresql://" + user + "@" + socket + ":5432/" + database;
}

}  // namespace drapewright::desktop_test
