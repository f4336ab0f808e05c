// The page of the shelf by mouse and keys: opened without set-up, booking, the log, a server.
#include "app/desktop/stores/shelf_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QLabel>
#include <QLineEdit>
#include <QSettings>
#include <QSignalSpy>
#include <QSpinBox>
#include <QTabBar>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QTest>

#include "app/desktop/stores/sorted_table.h"
#include "core/base/calendar.h"
#include "core/forecast/forecast.h"
#include "tests/desktop/stores/database_server.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

using desktop::ShelfPage;
using desktop::SortedTable;

constexpr int patience_ms = 30000;
const int today = day_number("2026-03-04").value();

constexpr const char* list =
    "item,lot,on_hand,expires,on_order,due,pack_size,lead_days,unit_cost,minimum\n"
    "Film,late,5,2026-09-01,,,10,4,6,20\n"
    "Film,soon,3,2026-03-20,,,,,,\n"
    "Film,past,9,2026-03-01,,,,,,\n"
    "Film,,,2027-01-31,30,2026-03-02,,,,\n"
    "Port,,4,,,,5,4,14,\n";

class ShelfPageTest : public testing::Test {
 protected:
  void SetUp() override {
    QSettings().setValue("shelf_place", folder_.filePath("new/shelf.sqlite"));
    QSettings().remove("shelf_booked_by");
    page_.resize(1030, 620);
    page_.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&page_));
    act([&] { page_.open(); });
    type("booking_who", "KM");
  }

  /// Until the shelf has answered what `what` asked of it.
  template <class What>
  void act(What what) {
    QSignalSpy shown(&page_, &ShelfPage::shown_view);
    what();
    ASSERT_TRUE(shown.count() > 0 || shown.wait(patience_ms));
  }
  template <class Widget>
  Widget& find(const char* name) {
    auto* widget = page_.findChild<Widget*>(name);
    if (widget == nullptr) throw std::logic_error(std::string("no ") + name);
    return *widget;
  }
  void click(const char* name) {
    auto& button = find<QAbstractButton>(name);
    EXPECT_TRUE(button.isEnabled()) << name;
    QTest::mouseClick(&button, Qt::LeftButton, {}, QPoint(12, button.height() / 2));
  }
  void type(const char* name, const QString& text) {
    auto& field = find<QWidget>(name);
    field.setFocus();
    QTest::keySequence(&field, QKeySequence::SelectAll);
    QTest::keyClick(&field, Qt::Key_Delete);
    QTest::keyClicks(&field, text);
  }
  void show_part(int index) {
    auto* bar = find<QTabWidget>("booking_parts").tabBar();
    QTest::mouseClick(bar, Qt::LeftButton, {}, bar->tabRect(index).center());
  }
  void import() {
    QFile file(folder_.filePath("stock.csv"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(list);
    file.close();
    act([&] { EXPECT_EQ(page_.import_list(file.fileName()), ""); });
  }
  QString told() { return find<QLabel>("shelf_told").text(); }
  /// "item | lot | ..." of a table's row.
  QString row(const char* table, int index) {
    const auto* model = find<SortedTable>(table).model();
    QStringList cells;
    for (int i = 0; i < model->columnCount(); ++i) {
      cells << model->index(index, i).data().toString();
    }
    return cells.join("|");
  }
  int rows(const char* table) { return find<SortedTable>(table).model()->rowCount(); }
  int on_hand(const std::string& name) {
    int count = 0;
    for (const auto& item : page_.shelf()) {
      if (item.item != name) continue;
      for (const auto& lot : item.lots) count += lot.quantity;
    }
    return count;
  }

  QTemporaryDir folder_;
  ShelfPage page_{today};
};

TEST_F(ShelfPageTest, OpensWithoutSetUpAndSaysWhatToDoFirst) {
  EXPECT_TRUE(QFile::exists(folder_.filePath("new/shelf.sqlite")));
  EXPECT_TRUE(find<QWidget>("shelf_empty").isVisible());
  EXPECT_FALSE(find<QAbstractButton>("booking_book").isEnabled());
  act([&] { click("shelf_start"); });
  EXPECT_FALSE(find<QWidget>("shelf_empty").isVisible());
  EXPECT_EQ(page_.shelf().size(), forecast::stock_template().size());
}

TEST_F(ShelfPageTest, ImportsAStockListAndPointsOutWhatIsPastItsDateOrLow) {
  import();
  EXPECT_TRUE(told().contains("stock.csv is on the shelf: 2 items")) << told().toStdString();
  ASSERT_EQ(rows("shelf_lots"), 6);
  EXPECT_EQ(row("shelf_lots", 0), "Film|||8|||below the minimum of 20");
  EXPECT_EQ(row("shelf_lots", 1), "Film|past|2026-03-01|9|||past its date");
  EXPECT_EQ(row("shelf_lots", 2), "Film|soon|2026-03-20|3|||16 days left");
  EXPECT_EQ(row("shelf_lots", 4), "Film||2027-01-31||2026-03-02|30|overdue");
  EXPECT_EQ(rows("shelf_log"), 4);
  EXPECT_TRUE(row("shelf_log", 0).contains("KM|Port||4|counted: stock.csv"));
}

TEST_F(ShelfPageTest, SaysRowAndColumnOfAFaultyListAndKeepsTheShelf) {
  import();
  QFile file(folder_.filePath("faulty.csv"));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("item,on_hand\nFilm,many\n");
  file.close();
  EXPECT_TRUE(page_.import_list(file.fileName()).contains("row 2, column on_hand"));
  EXPECT_EQ(on_hand("Film"), 17);
}

TEST_F(ShelfPageTest, TakesOutWhatExpiresFirstAndTellsItBefore) {
  import();
  type("take_pieces", "4");
  EXPECT_EQ(find<QLabel>("take_from").text(),
            "First expired first out: 3 of lot soon, use by 2026-03-20; 1 of lot late, use by "
            "2026-09-01.");
  type("booking_note", "ward 3");
  act([&] { QTest::keyClick(&find<QLineEdit>("booking_note"), Qt::Key_Return); });
  EXPECT_TRUE(told().contains("Taken out: 4 pieces of Film.")) << told().toStdString();
  EXPECT_EQ(on_hand("Film"), 13);
  EXPECT_TRUE(row("shelf_log", 0).endsWith("KM|Film|late|-1|ward 3"));
  EXPECT_TRUE(row("shelf_log", 1).endsWith("KM|Film|soon|-3|ward 3"));
  EXPECT_EQ(find<QLineEdit>("booking_note").text(), "");
}

TEST_F(ShelfPageTest, TakesNoMoreThanThereIsInDate) {
  import();
  type("take_pieces", "9");
  EXPECT_FALSE(find<QAbstractButton>("booking_book").isEnabled());
  EXPECT_EQ(find<QLabel>("booking_objection").text(), "Only 8 on the shelf and in date.");
  type("take_pieces", "8");
  EXPECT_TRUE(find<QAbstractButton>("booking_book").isEnabled());
  type("booking_who", "");
  EXPECT_FALSE(find<QAbstractButton>("booking_book").isEnabled());
}

TEST_F(ShelfPageTest, TakesNothingThatExpiredOvernight) {
  import();
  act([&] { page_.set_today(day_number("2026-03-21").value()); });
  EXPECT_EQ(row("shelf_lots", 2), "Film|soon|2026-03-20|3|||past its date");
  type("take_pieces", "6");
  EXPECT_EQ(find<QLabel>("booking_objection").text(), "Only 5 on the shelf and in date.");
}

TEST_F(ShelfPageTest, ReceivesWhatIsOnOrderByAClickOnItsRow) {
  import();
  auto& lots = find<SortedTable>("shelf_lots");
  QTest::mouseClick(lots.viewport(), Qt::LeftButton, {},
                    lots.visualRect(lots.model()->index(4, 0)).center());
  show_part(1);
  EXPECT_TRUE(find<QComboBox>("receive_delivery").currentText().contains("2026-03-02"));
  EXPECT_EQ(find<QSpinBox>("receive_pieces").value(), 30);
  EXPECT_EQ(find<QLineEdit>("receive_expires").text(), "2027-01-31");
  type("receive_pieces", "20");
  type("receive_lot", "B7");
  act([&] { click("booking_book"); });
  EXPECT_EQ(on_hand("Film"), 37);
  ASSERT_EQ(page_.shelf()[0].deliveries.size(), 1U);
  EXPECT_EQ(page_.shelf()[0].deliveries[0].quantity, 10);
}

TEST_F(ShelfPageTest, MakesUpNoDateForWhatCame) {
  import();
  find<QComboBox>("booking_item").setCurrentIndex(1);
  show_part(1);
  auto& book = find<QAbstractButton>("booking_book");
  EXPECT_FALSE(book.isEnabled());
  type("receive_expires", "31.3.2027");
  EXPECT_FALSE(book.isEnabled());
  type("receive_expires", "2026-03-03");
  EXPECT_EQ(find<QLabel>("booking_objection").text(), "It is past its date already.");
  type("receive_expires", "2027-03-31");
  EXPECT_TRUE(book.isEnabled());
  type("receive_expires", "");
  click("receive_undated");
  EXPECT_TRUE(book.isEnabled());
  act([&] { click("booking_book"); });
  EXPECT_EQ(on_hand("Port"), 9);
}

TEST_F(ShelfPageTest, CountsALotAnew) {
  import();
  auto& lots = find<SortedTable>("shelf_lots");
  QTest::mouseClick(lots.viewport(), Qt::LeftButton, {},
                    lots.visualRect(lots.model()->index(2, 1)).center());
  show_part(2);
  EXPECT_EQ(find<QSpinBox>("count_pieces").value(), 3);
  type("count_pieces", "2");
  act([&] { click("booking_book"); });
  EXPECT_EQ(on_hand("Film"), 16);
  EXPECT_TRUE(row("shelf_log", 0).contains("Film|soon|-1"));
}

TEST_F(ShelfPageTest, PutsOnOrderWhatWasOrdered) {
  import();
  find<QComboBox>("booking_item").setCurrentIndex(1);
  show_part(3);
  EXPECT_EQ(find<QSpinBox>("order_pieces").value(), 5);          // a pack
  EXPECT_EQ(find<QLineEdit>("order_due").text(), "2026-03-08");  // the lead time from today
  type("order_due", "2026-03-03");
  EXPECT_EQ(find<QLabel>("booking_objection").text(), "That day is over.");
  type("order_due", "2026-03-10");
  type("order_pieces", "15");
  type("booking_note", "by telephone");
  act([&] { click("booking_book"); });
  EXPECT_EQ(page_.shelf()[1].deliveries,
            (std::vector<forecast::Delivery>{{day_number("2026-03-10").value(), 15, {}}}));
  EXPECT_EQ(on_hand("Port"), 4);
  EXPECT_TRUE(row("shelf_log", 0).endsWith("Port||0|on order: 15, due 2026-03-10; by telephone"));
}

TEST_F(ShelfPageTest, TellsWhenAnotherHasBookedMeanwhile) {
  import();
  {
    desktop::ShelfStore other(desktop::kept_shelf_place(), "another");
    other.take("Film", 8, today, "elsewhere");
  }
  type("take_pieces", "2");
  act([&] { click("booking_book"); });
  EXPECT_TRUE(told().contains("Not done")) << told().toStdString();
  EXPECT_TRUE(told().contains("2 asked for, 0 on the shelf and in date")) << told().toStdString();
  EXPECT_EQ(on_hand("Film"), 9);  // what is there now is shown
  EXPECT_TRUE(row("shelf_log", 0).contains("another"));
}

TEST_F(ShelfPageTest, SavesAListThatIsReadBackTheSame) {
  import();
  const auto before = page_.shelf();
  const QString path = folder_.filePath("out.csv");
  answering("", choosing(path), [&] { click("shelf_export"); });
  ASSERT_TRUE(QFile::exists(path));
  act([&] { EXPECT_EQ(page_.import_list(path), ""); });
  EXPECT_EQ(page_.shelf(), before);
}

TEST_F(ShelfPageTest, SaysWhyAServerCannotBeReached) {
  click("shelf_place");
  click("shelf_on_server");
  EXPECT_FALSE(find<QAbstractButton>("shelf_open").isEnabled());
  type("shelf_host", folder_.filePath("no server"));
  type("shelf_database", "shelf");
  type("shelf_user", "ward");
  act([&] { click("shelf_open"); });
  if (!QSqlDatabase::isDriverAvailable("QPSQL")) GTEST_SKIP() << "no driver";
  EXPECT_TRUE(told().contains("it cannot be opened")) << told().toStdString();
  EXPECT_FALSE(find<QAbstractButton>("booking_book").isEnabled());
  click("shelf_here");
  act([&] { click("shelf_open"); });
  EXPECT_TRUE(find<QWidget>("shelf_empty").isVisible());
}

/// Every byte that the settings have put on the disk.
QByteArray kept_settings() {
  QSettings().sync();
  QFile file(QSettings().fileName());
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

TEST_F(ShelfPageTest, AsksForTheServersPasswordAndKeepsItInNoFile) {
  DatabaseServer server;
  if (!server.why_not().isEmpty()) GTEST_SKIP() << qPrintable(server.why_not());
  const QString address = server.guarded_shelf("shared", "ward", "open-sesame");
  ASSERT_FALSE(address.isEmpty()) << qPrintable(server.why_not());
  const auto place = desktop::shelf_place(address);
  click("shelf_place");
  click("shelf_on_server");
  type("shelf_host", place.host);
  type("shelf_database", place.database);
  type("shelf_user", place.user);
  act([&] { click("shelf_open"); });
  EXPECT_TRUE(told().contains("the server asks for a password")) << told().toStdString();
  EXPECT_EQ(QApplication::focusWidget(), &find<QLineEdit>("shelf_password"));
  type("shelf_password", "wrong");
  act([&] { click("shelf_open"); });
  EXPECT_TRUE(told().contains("Not done")) << told().toStdString();
  type("shelf_password", "open-sesame");
  act([&] { click("shelf_open"); });
  EXPECT_EQ(told(), "The shelf is open.");
  EXPECT_EQ(find<QLineEdit>("shelf_password").text(), "");
  import();
  EXPECT_EQ(on_hand("Film"), 17);  // the password is still known to the window
  EXPECT_TRUE(kept_settings().contains("ward@"));
  EXPECT_FALSE(kept_settings().contains("open-sesame"));
}

}  // namespace
}  // namespace drapewright::desktop_test
