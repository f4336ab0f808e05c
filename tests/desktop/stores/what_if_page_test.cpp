// What if: alternatives side by side, worked out in the background.
#include "app/desktop/stores/what_if_page.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QListWidget>
#include <QProgressBar>
#include <QPushButton>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

#include "app/desktop/stores/sorted_table.h"
#include "core/base/calendar.h"
#include "core/forecast/forecast.h"
#include "tests/support/places.h"

namespace drapewright::desktop_test {
namespace {

using desktop::WhatIfPage;

constexpr int patience_ms = 120000;
const QString demo_cases = QString::fromStdString(support::project_folder()) + "/demo_cases";

class WhatIfPageTest : public testing::Test {
 protected:
  WhatIfPageTest() {
    basis_.settings.first_day = day_number("2026-03-04").value();
    page_.resize(1030, 620);
    page_.show();
    EXPECT_TRUE(QTest::qWaitForWindowExposed(&page_));
  }

  void open(int copies = 1) {
    for (int i = 0; i < copies; ++i) {
      for (const char* name : {"plain-heel", "series-of-three", "no-port-zone"}) {
        QFile::copy(demo_cases + "/" + name + ".json",
                    folder_.filePath(QString("%1%2.json").arg(name).arg(i)));
      }
    }
    basis_.folder = folder_.path();
    page_.show_stale();
  }
  template <class Widget>
  Widget& find(const char* name) {
    return *page_.findChild<Widget*>(name);
  }
  void click(const char* name) {
    auto& button = find<QAbstractButton>(name);
    ASSERT_TRUE(button.isEnabled()) << name;
    QTest::mouseClick(&button, Qt::LeftButton, {}, QPoint(12, button.height() / 2));
  }
  void compare() {
    QSignalSpy shown(&page_, &WhatIfPage::shown_result);
    click("what_if_compare");
    ASSERT_TRUE(shown.wait(patience_ms));
  }
  /// Leaves only the alternatives of these titles ticked.
  void tick(const QStringList& titles) {
    auto& list = find<QListWidget>("what_if_list");
    for (int i = 0; i < list.count(); ++i) {
      list.item(i)->setCheckState(titles.contains(list.item(i)->text()) ? Qt::Checked
                                                                        : Qt::Unchecked);
    }
  }
  /// What the table has for a figure under an alternative.
  double figure(const QString& item, const QString& name, const QString& column) {
    const auto& table = page_.table().table();
    const auto index = static_cast<std::size_t>(table.titles.indexOf(column));
    for (const auto& row : table.rows) {
      if (row[0].text() == item && row[1].text() == name) return row.at(index).value.toDouble();
    }
    ADD_FAILURE() << "no row " << (item + ", " + name).toStdString();
    return -1;
  }

  QTemporaryDir folder_;
  WhatIfPage::Basis basis_;
  WhatIfPage page_{[this] { return basis_; }};
};

TEST_F(WhatIfPageTest, AsksForAFolderFirst) {
  EXPECT_EQ(find<QLabel>("what_if_told").text(), "Open a folder of cases first.");
  EXPECT_FALSE(find<QPushButton>("what_if_compare").isEnabled());
}

TEST_F(WhatIfPageTest, PutsTheIntervalsSideBySide) {
  open();
  tick({"Change every 48 h", "Change every 72 h"});
  compare();
  EXPECT_EQ(page_.table().table().titles,
            (QStringList{"Item", "Figure", "As it is", "Change every 48 h", "Change every 72 h"}));
  const QString port = "Port with tubing", use = "Expected use";
  EXPECT_GT(figure(port, use, "Change every 48 h"), figure(port, use, "Change every 72 h"));
  EXPECT_GT(figure("All items", "Expected cost", "Change every 48 h"),
            figure("All items", "Expected cost", "Change every 72 h"));
  // The demo cases are changed every 72 h as it is.
  EXPECT_EQ(figure(port, use, "As it is"), figure(port, use, "Change every 72 h"));
}

TEST_F(WhatIfPageTest, OrdersMoreForAHigherServiceLevel) {
  open();
  basis_.stock = forecast::stock_template();
  for (auto& item : basis_.stock) item.lead_days = 5;
  tick({"Service level 90 %", "Service level 99 %"});
  compare();
  const QString port = "Port with tubing";
  EXPECT_LT(figure(port, "Reorder point", "Service level 90 %"),
            figure(port, "Reorder point", "Service level 99 %"));
  EXPECT_LE(figure(port, "To order, pieces", "Service level 90 %"),
            figure(port, "To order, pieces", "Service level 99 %"));
  EXPECT_EQ(figure(port, "Expected use", "Service level 90 %"),
            figure(port, "Expected use", "Service level 99 %"));
  EXPECT_LE(figure("All items", "Cost of the orders", "As it is"),
            figure("All items", "Cost of the orders", "Service level 99 %"));
}

TEST_F(WhatIfPageTest, TakesAnotherSheetAndAnotherCanister) {
  open();
  const QString use = "Expected use", sheet = "Only Filler sheet 20 x 12 x 1.5 cm";
  tick({sheet, "Canister of 500 mL"});
  compare();
  // One of the cases has a list of its own without that sheet: it keeps what it is cut from.
  EXPECT_LT(figure("Filler sheet 10 x 8 x 1.5 cm", use, sheet),
            figure("Filler sheet 10 x 8 x 1.5 cm", use, "As it is"));
  EXPECT_GT(figure("Filler sheet 20 x 12 x 1.5 cm", use, sheet), 0);
  EXPECT_EQ(figure("Canister 300 mL", use, "Canister of 500 mL"), 0);
  EXPECT_GT(figure("Canister 500 mL", use, "Canister of 500 mL"), 0);
}

TEST_F(WhatIfPageTest, SaysWhatHasNoCostAndSoLooksCheap) {
  open();
  basis_.stock = forecast::stock_template();
  std::erase_if(basis_.stock, [](const auto& item) { return item.item == "Canister 500 mL"; });
  tick({"Canister of 500 mL"});
  compare();
  EXPECT_TRUE(find<QLabel>("what_if_told").text().contains("unit cost is known for Canister 500"));
  basis_.stock = forecast::stock_template();
  compare();
  EXPECT_FALSE(find<QLabel>("what_if_told").text().contains("unit cost"));
}

TEST_F(WhatIfPageTest, ShowsDifferencesByAClick) {
  open();
  tick({"Change every 48 h"});
  compare();
  const QString port = "Port with tubing", use = "Expected use", two_days = "Change every 48 h";
  const double more = figure(port, use, two_days) - figure(port, use, "As it is");
  click("what_if_differences");
  EXPECT_DOUBLE_EQ(figure(port, use, two_days), more);
  EXPECT_GT(more, 0);
}

TEST_F(WhatIfPageTest, AddsAndRemovesAlternatives) {
  open();
  tick({});
  EXPECT_FALSE(find<QPushButton>("what_if_compare").isEnabled());
  find<QComboBox>("what_if_what").setCurrentIndex(0);
  auto& number = find<QDoubleSpinBox>("what_if_number");
  number.setFocus();
  QTest::keySequence(&number, QKeySequence::SelectAll);
  QTest::keyClicks(&number, "96");
  click("what_if_add");
  auto& list = find<QListWidget>("what_if_list");
  EXPECT_EQ(list.currentItem()->text(), "Change every 96 h");
  EXPECT_TRUE(find<QPushButton>("what_if_compare").isEnabled());
  const int before = list.count();
  click("what_if_add");  // it is there already
  EXPECT_EQ(list.count(), before);
  click("what_if_remove");
  EXPECT_EQ(list.count(), before - 1);
  EXPECT_FALSE(find<QPushButton>("what_if_compare").isEnabled());
}

TEST_F(WhatIfPageTest, SaysWhenItIsNoLongerOfWhatIsShown) {
  open();
  tick({"Service level 99 %"});
  compare();
  EXPECT_FALSE(find<QLabel>("what_if_told").isVisible());
  tick({"Service level 90 %"});
  EXPECT_TRUE(find<QLabel>("what_if_told").text().contains("work it out again"));
}

TEST_F(WhatIfPageTest, LeavesABrokenCaseOutOfAllColumnsAndSaysSo) {
  open();
  QFile file(folder_.filePath("broken.json"));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("{,}");
  file.close();
  tick({"Service level 99 %"});
  compare();
  EXPECT_EQ(page_.result()->columns[0].forecast.patients,
            page_.result()->columns[1].forecast.patients);
  EXPECT_TRUE(find<QLabel>("what_if_told").text().contains("broken.json"));
}

TEST_F(WhatIfPageTest, CanBeCancelled) {
  open(60);
  click("what_if_compare");
  auto& cancel = find<QPushButton>("what_if_cancel");
  EXPECT_TRUE(cancel.isVisible());
  EXPECT_TRUE(page_.findChild<QProgressBar*>()->isVisible());
  QTest::mouseClick(&cancel, Qt::LeftButton);
  EXPECT_FALSE(page_.is_busy());
  EXPECT_FALSE(cancel.isVisible());
  EXPECT_EQ(page_.result(), nullptr);
  EXPECT_TRUE(find<QPushButton>("what_if_compare").isEnabled());
}

}  // namespace
}  // namespace drapewright::desktop_test
