#include "app/desktop/stores/shelf_store.h"

#include <QDateTime>
#include <QDir>
#include <QFileInfo>
#include <QSqlError>
#include <QSqlQuery>
#include <QUuid>
#include <algorithm>
#include <map>
#include <numeric>

#include "core/base/calendar.h"
#include "core/base/error.h"
#include "core/base/say.h"

namespace drapewright::desktop {
namespace {

using forecast::Delivery;
using forecast::Lot;
using forecast::ShelfItem;

constexpr int version = 1;
/// How long one booking waits for another's end before it gives up.
constexpr auto patience = "QSQLITE_BUSY_TIMEOUT=20000";
/// How long a server may take to answer at all.
constexpr auto server_patience = "connect_timeout=10";

/// An expiry that is not known is the empty text, so that it can be part of a key.
QString text_of(const std::optional<int>& day) {
  return day ? QString::fromStdString(date_of_day(*day)) : QString("");
}
std::optional<int> day_of(const QVariant& text) {
  return day_number(text.toString().toStdString());
}
QString words(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

[[noreturn]] void fail(const QString& what, const QSqlError& error) {
  throw InputError(say("the shelf's database: {1}: {2}",
                       {what.toStdString(), error.text().simplified().toStdString()}),
                   say("a database that can be read and written"));
}

/// The driver has no number for this fault, only the client's words; where they are in another
/// language, they are told as they are.
[[noreturn]] void fail_to_open(const ShelfPlace& place, const QSqlError& error) {
  if (place.is_server() && place.password.isEmpty() &&
      error.text().contains("no password supplied")) {
    throw InputError(say("the server asks for a password"),
                     say("it typed in, or in the password file of the server's client"));
  }
  fail(QString::fromStdString(say("it cannot be opened")), error);
}

}  // namespace

std::vector<Lot> first_expired(std::vector<Lot> lots, int quantity, int today) {
  std::erase_if(lots, [&](const Lot& lot) { return lot.expires && *lot.expires < today; });
  std::ranges::stable_sort(lots, [](const Lot& a, const Lot& b) {
    if (a.expires.has_value() != b.expires.has_value()) return a.expires.has_value();
    return std::pair(a.expires, a.name) < std::pair(b.expires, b.name);
  });
  std::vector<Lot> parts;
  for (Lot& lot : lots) {
    lot.quantity = std::min(lot.quantity, quantity);
    if (lot.quantity < 1) continue;
    quantity -= lot.quantity;
    parts.push_back(lot);
  }
  return parts;
}

/// Commits when it is told to; else nothing has happened.
class ShelfStore::Transaction {
 public:
  /// On a server the row of the item is locked, so that two who take of it come one after the
  /// other; a file is locked as a whole.
  Transaction(ShelfStore& store, const QString& item = {}) : store_(store) {
    store_.run(store_.is_server() ? "BEGIN" : "BEGIN IMMEDIATE");
    if (store_.is_server() && !item.isEmpty()) {
      store_.run("SELECT name FROM item WHERE name = ? FOR UPDATE", {item});
    }
  }
  ~Transaction() {
    if (!done_) QSqlQuery(QSqlDatabase::database(store_.connection_)).exec("ROLLBACK");
  }
  Q_DISABLE_COPY_MOVE(Transaction)
  void commit() {
    store_.run("COMMIT");
    done_ = true;
  }

 private:
  ShelfStore& store_;
  bool done_ = false;
};

ShelfStore::ShelfStore(const ShelfPlace& place, QString who)
    : connection_(QUuid::createUuid().toString()),
      who_(std::move(who)),
      server_(place.is_server()) {
  auto database = QSqlDatabase::addDatabase(server_ ? "QPSQL" : "QSQLITE", connection_);
  if (server_) {
    database.setHostName(place.host);
    database.setPort(place.port);
    database.setDatabaseName(place.database);
    database.setUserName(place.user);
    database.setPassword(place.password);
    database.setConnectOptions(server_patience);
  } else {
    QDir().mkpath(QFileInfo(place.file).absolutePath());
    database.setDatabaseName(place.file);
    database.setConnectOptions(patience);
  }
  try {
    if (!database.open()) fail_to_open(place, database.lastError());
    make_tables();
  } catch (...) {
    database = {};
    QSqlDatabase::removeDatabase(connection_);
    throw;
  }
}

ShelfStore::~ShelfStore() {
  QSqlDatabase::database(connection_, false).close();
  QSqlDatabase::removeDatabase(connection_);
}

QSqlQuery ShelfStore::run(const QString& sql, const QVariantList& values) {
  QSqlQuery query(QSqlDatabase::database(connection_, false));
  query.setForwardOnly(true);
  bool good = values.isEmpty() ? query.exec(sql) : query.prepare(sql);
  if (!values.isEmpty() && good) {
    for (const QVariant& value : values) query.addBindValue(value);
    good = query.exec();
  }
  if (!good) fail(sql.section(' ', 0, 2), query.lastError());
  return query;
}

/// The same tables in a file and on a server; only a number that counts up is spelt differently.
void ShelfStore::make_tables() {
  if (server_) {
    // It would say on standard error that a table is there already.
    run("SET client_min_messages = warning");
  } else {
    run("PRAGMA foreign_keys = ON");
    run("PRAGMA synchronous = FULL");
  }
  Transaction change(*this);
  // Two who open a new shelf at once make its tables one after the other.
  if (server_) run("SELECT pg_advisory_xact_lock(72287)");
  run("CREATE TABLE IF NOT EXISTS shelf (version INTEGER PRIMARY KEY)");
  QSqlQuery found = run("SELECT max(version) FROM shelf");
  found.next();
  const int there = found.value(0).toInt();
  found.finish();
  if (there > version) {
    throw InputError(say("the shelf was made by a later version of this program"),
                     say("version {1} of its tables", {version}));
  }
  if (there < version) {
    run("INSERT INTO shelf (version) VALUES (1)");
    run("CREATE TABLE item (name TEXT PRIMARY KEY, place INTEGER NOT NULL, kind TEXT NOT NULL, "
        "pack_size INTEGER NOT NULL CHECK (pack_size >= 1), lead_days DOUBLE PRECISION NOT NULL, "
        "lead_spread_days DOUBLE PRECISION NOT NULL, unit_cost DOUBLE PRECISION, "
        "minimum INTEGER NOT NULL CHECK (minimum >= 0))");
    run("CREATE TABLE lot (item TEXT NOT NULL REFERENCES item (name), name TEXT NOT NULL, "
        "expires TEXT NOT NULL, quantity INTEGER NOT NULL CHECK (quantity >= 0), "
        "PRIMARY KEY (item, name, expires))");
    run("CREATE TABLE delivery (item TEXT NOT NULL REFERENCES item (name), due TEXT NOT NULL, "
        "expires TEXT NOT NULL, quantity INTEGER NOT NULL CHECK (quantity >= 0))");
    run(QString("CREATE TABLE booking (id %1, at TEXT NOT NULL, who TEXT NOT NULL, "
                "item TEXT NOT NULL, lot TEXT NOT NULL, quantity INTEGER NOT NULL, "
                "reason TEXT NOT NULL)")
            .arg(server_ ? "BIGINT GENERATED BY DEFAULT AS IDENTITY PRIMARY KEY"
                         : "INTEGER PRIMARY KEY"));
  }
  change.commit();
}

forecast::Shelf ShelfStore::load() {
  Transaction one_moment(*this);
  forecast::Shelf shelf;
  std::map<QString, std::size_t> places;
  QSqlQuery items =
      run("SELECT name, kind, pack_size, lead_days, lead_spread_days, unit_cost, minimum FROM item "
          "ORDER BY place, name");
  while (items.next()) {
    ShelfItem item{.item = items.value(0).toString().toStdString(),
                   .kind = supplies::kind_named(items.value(1).toString().toStdString())
                               .value_or(supplies::Kind::other),
                   .pack_size = items.value(2).toInt(),
                   .lead_days = items.value(3).toDouble(),
                   .lead_spread_days = items.value(4).toDouble(),
                   .minimum = items.value(6).toInt()};
    if (!items.value(5).isNull()) item.unit_cost = items.value(5).toDouble();
    places[items.value(0).toString()] = shelf.size();
    shelf.push_back(std::move(item));
  }
  QSqlQuery lots = run("SELECT item, name, expires, quantity FROM lot ORDER BY expires, name");
  while (lots.next()) {
    shelf[places.at(lots.value(0).toString())].lots.push_back(
        {lots.value(3).toInt(), day_of(lots.value(2)), lots.value(1).toString().toStdString()});
  }
  QSqlQuery coming = run("SELECT item, due, expires, quantity FROM delivery ORDER BY due, expires");
  while (coming.next()) {
    const auto due = day_of(coming.value(1));
    if (!due) continue;
    shelf[places.at(coming.value(0).toString())].deliveries.push_back(
        {*due, coming.value(3).toInt(), day_of(coming.value(2))});
  }
  one_moment.commit();
  return shelf;
}

void ShelfStore::replace(const forecast::Shelf& shelf, const QString& reason) {
  for (const ShelfItem& item : shelf) forecast::check(item);
  Transaction change(*this);
  // On a server nobody may book between the old list and the new one.
  if (server_) run("LOCK TABLE item, lot, delivery IN EXCLUSIVE MODE");
  QSqlQuery before = run("SELECT item, name, quantity FROM lot WHERE quantity > 0");
  std::vector<Booking> gone;
  while (before.next()) {
    gone.push_back({.item = before.value(0).toString(),
                    .lot = before.value(1).toString(),
                    .quantity = -before.value(2).toInt()});
  }
  before.finish();
  for (const Booking& line : gone) write_log(line.item, line.lot, line.quantity, reason);
  for (const char* table : {"delivery", "lot", "item"}) run(QString("DELETE FROM %1").arg(table));
  for (const ShelfItem& item : shelf) write_item(item, reason);
  change.commit();
}

void ShelfStore::write_item(const ShelfItem& item, const QString& reason) {
  const QString name = words(item.item);
  QSqlQuery count = run("SELECT count(*) FROM item");
  count.next();
  const int place = count.value(0).toInt();
  count.finish();
  run("INSERT INTO item (name, place, kind, pack_size, lead_days, lead_spread_days, unit_cost, "
      "minimum) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
      {name, place, words(supplies::name_of(item.kind)), item.pack_size, item.lead_days,
       item.lead_spread_days, item.unit_cost ? QVariant(*item.unit_cost) : QVariant(),
       item.minimum});
  for (const Lot& lot : item.lots) {
    // Two lines of one lot are one lot.
    run("INSERT INTO lot (item, name, expires, quantity) VALUES (?, ?, ?, ?) ON CONFLICT (item, "
        "name, expires) DO UPDATE SET quantity = lot.quantity + excluded.quantity",
        {name, words(lot.name), text_of(lot.expires), lot.quantity});
    if (lot.quantity != 0) write_log(name, words(lot.name), lot.quantity, reason);
  }
  for (const Delivery& delivery : item.deliveries) {
    run("INSERT INTO delivery (item, due, expires, quantity) VALUES (?, ?, ?, ?)",
        {name, text_of(delivery.due), text_of(delivery.expires), delivery.quantity});
  }
}

void ShelfStore::write_log(const QString& item, const QString& lot, int quantity,
                           const QString& reason) {
  run("INSERT INTO booking (at, who, item, lot, quantity, reason) VALUES (?, ?, ?, ?, ?, ?)",
      {QDateTime::currentDateTimeUtc().toString("yyyy-MM-dd HH:mm:ss"), who_, item, lot, quantity,
       reason});
}

void ShelfStore::take(const QString& item, int quantity, int today, const QString& reason) {
  if (quantity < 1) throw InputError(say("nothing is to be taken"), say("1 piece or more"));
  Transaction change(*this, item);
  QSqlQuery found = run("SELECT name, expires, quantity FROM lot WHERE item = ?", {item});
  std::vector<Lot> lots;
  while (found.next()) {
    lots.push_back(
        {found.value(2).toInt(), day_of(found.value(1)), found.value(0).toString().toStdString()});
  }
  found.finish();
  const auto parts = first_expired(std::move(lots), quantity, today);
  const int there = std::accumulate(parts.begin(), parts.end(), 0,
                                    [](int sum, const Lot& lot) { return sum + lot.quantity; });
  if (there < quantity) {
    throw InputError(say("{1}: {2} asked for, {3} on the shelf and in date",
                         {item.toStdString(), quantity, there}),
                     say("no more than that"));
  }
  for (const Lot& part : parts) {
    run("UPDATE lot SET quantity = quantity - ? WHERE item = ? AND name = ? AND expires = ?",
        {part.quantity, item, words(part.name), text_of(part.expires)});
    write_log(item, words(part.name), -part.quantity, reason);
  }
  change.commit();
}

void ShelfStore::expect_item(const QString& item) {
  QSqlQuery known = run("SELECT name FROM item WHERE name = ?", {item});
  if (!known.next()) {
    throw InputError(say("'{1}' is not on the shelf's list", {item.toStdString()}),
                     say("an item of the list"));
  }
}

void ShelfStore::put(const QString& item, const Lot& lot, const QString& reason) {
  if (lot.quantity < 1) throw InputError(say("nothing is to be added"), say("1 piece or more"));
  expect_item(item);
  run("INSERT INTO lot (item, name, expires, quantity) VALUES (?, ?, ?, ?) ON CONFLICT (item, "
      "name, expires) DO UPDATE SET quantity = lot.quantity + excluded.quantity",
      {item, words(lot.name), text_of(lot.expires), lot.quantity});
  write_log(item, words(lot.name), lot.quantity, reason);
}

void ShelfStore::add(const QString& item, const Lot& lot, const QString& reason) {
  Transaction change(*this, item);
  put(item, lot, reason);
  change.commit();
}

void ShelfStore::order(const QString& item, const Delivery& delivery, const QString& reason) {
  if (delivery.quantity < 1) throw InputError(say("nothing is ordered"), say("1 piece or more"));
  Transaction change(*this, item);
  expect_item(item);
  run("INSERT INTO delivery (item, due, expires, quantity) VALUES (?, ?, ?, ?)",
      {item, text_of(delivery.due), text_of(delivery.expires), delivery.quantity});
  write_log(item, "", 0, reason);
  change.commit();
}

void ShelfStore::receive(const QString& item, const Delivery& expected, const Lot& came,
                         const QString& reason) {
  Transaction change(*this, item);
  const QVariantList key{item, text_of(expected.due), text_of(expected.expires)};
  QSqlQuery found =
      run("SELECT sum(quantity) FROM delivery WHERE item = ? AND due = ? AND expires = ?", key);
  const int coming = found.next() ? found.value(0).toInt() : 0;
  found.finish();
  if (coming < 1) {
    throw InputError(
        say("{1}, due {2}: no longer on order", {item.toStdString(), date_of_day(expected.due)}),
        say("a delivery that nobody has received yet"));
  }
  run("DELETE FROM delivery WHERE item = ? AND due = ? AND expires = ?", key);
  if (came.quantity < coming) {
    run("INSERT INTO delivery (item, due, expires, quantity) VALUES (?, ?, ?, ?)",
        key + QVariantList{coming - came.quantity});
  }
  put(item, came, reason);
  change.commit();
}

void ShelfStore::count(const QString& item, const Lot& seen, int counted, const QString& reason) {
  if (counted < 0) throw InputError(say("fewer than none were counted"), say("0 or more"));
  Transaction change(*this, item);
  const QVariantList key{item, words(seen.name), text_of(seen.expires)};
  QSqlQuery found =
      run("SELECT quantity FROM lot WHERE item = ? AND name = ? AND expires = ?", key);
  const int there = found.next() ? found.value(0).toInt() : 0;
  found.finish();
  if (there != seen.quantity) {
    throw InputError(
        say("{1}: somebody has booked since; the book has {2} now", {item.toStdString(), there}),
        say("the lot counted again"));
  }
  run("UPDATE lot SET quantity = ? WHERE item = ? AND name = ? AND expires = ?",
      QVariantList{counted} + key);
  if (counted != there) write_log(item, words(seen.name), counted - there, reason);
  change.commit();
}

std::vector<Booking> ShelfStore::log(int most) {
  QSqlQuery lines = run(
      "SELECT at, who, item, lot, quantity, reason FROM booking ORDER BY id DESC LIMIT ?", {most});
  std::vector<Booking> log;
  while (lines.next()) {
    log.push_back({lines.value(0).toString(), lines.value(1).toString(), lines.value(2).toString(),
                   lines.value(3).toString(), lines.value(4).toInt(), lines.value(5).toString()});
  }
  return log;
}

}  // namespace drapewright::desktop
