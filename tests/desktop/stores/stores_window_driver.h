#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QLabel>
#include <QSettings>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QTest>

#include "app/desktop/stores/chart_pane.h"
#include "app/desktop/stores/chart_view.h"
#include "app/desktop/stores/shelf_page.h"
#include "app/desktop/stores/sorted_table.h"
#include "app/desktop/stores/stores_window.h"
#include "core/base/calendar.h"
#include "tests/support/places.h"

namespace drapewright::desktop_test {

using desktop::ChartPane;
using desktop::ShelfPage;
using desktop::SortedTable;
using desktop::StoresWindow;

inline constexpr int patience_ms = 60000;
inline const QString demo_cases = QString::fromStdString(support::project_folder()) + "/demo_cases";

inline constexpr const char* stock =
    "item,on_hand,expires,on_order,due,pack_size,lead_days,unit_cost\n"
    "Port with tubing,20,2026-12-31,,,5,4,14\n"
    "Port with tubing,,,30,2026-03-12,,,\n"
    "Film sheet 20 x 20 cm,90,2026-03-10,,,10,4,6\n";

/// A window over a folder of three cases and an empty shelf of its own.
class StoresWindowTest : public testing::Test {
 protected:
  StoresWindowTest() : window_(first_day()) {
    window_.show();
    EXPECT_TRUE(QTest::qWaitForWindowExposed(&window_));
    for (const char* name : {"plain-heel.json", "series-of-three.json", "no-port-zone.json"}) {
      QFile::copy(demo_cases + "/" + name, folder_.filePath(name));
    }
  }

  /// The window opens its shelf when it is made: it must find a place of the test's own.
  int first_day() {
    QSettings().setValue("shelf_place", folder_.filePath("shelf.sqlite"));
    QSettings().remove("stores");  // a rate that another test took over
    return day_number("2026-03-04").value();
  }
  void open() {
    QSignalSpy shown(&window_, &StoresWindow::shown_result);
    window_.open_folder(folder_.path());
    ASSERT_TRUE(shown.wait(patience_ms));
  }
  void put(const QString& name, const QByteArray& text) {
    QFile file(folder_.filePath(name));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(text);
  }
  template <class Page>
  Page& page(const QString& title) {
    auto* pages = window_.findChild<QTabWidget*>();
    for (int i = 0; i < pages->count(); ++i) {
      if (pages->tabText(i) != title) continue;
      pages->setCurrentIndex(i);
      return dynamic_cast<Page&>(*pages->currentWidget());
    }
    throw std::logic_error("no page " + title.toStdString());
  }
  static QString cell(const SortedTable& table, int row, int column) {
    return table.model()->index(row, column).data().toString();
  }
  static QStringList column(const SortedTable& table, int index) {
    QStringList texts;
    for (int row = 0; row < table.model()->rowCount(); ++row) texts << cell(table, row, index);
    return texts;
  }
  QString words(const QString& label) { return words(label, window_); }
  static QString words(const QString& label, const QWidget& within) {
    return within.findChild<QLabel*>(label)->text();
  }

  QTemporaryDir folder_;
  StoresWindow window_;
};

}  // namespace drapewright::desktop_test
