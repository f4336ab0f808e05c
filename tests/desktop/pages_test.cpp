// What leaves the program on paper, from the window.
#include <gtest/gtest.h>

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QPrinter>
#include <QPushButton>
#include <QSettings>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

#include "app/desktop/pages/page_desk.h"
#include "app/desktop/pages/page_preview.h"
#include "app/desktop/pages/page_settings.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

using desktop::PageDesk;

struct PagesTest : testing::Test {
  void SetUp() override { QSettings().clear(); }
  void TearDown() override { QSettings().clear(); }

  /// By its menu entry, as a user opens it.
  PageDesk& open() {
    driver.window().findChild<QAction*>("print")->trigger();
    auto* desk = driver.window().findChild<PageDesk*>();
    EXPECT_NE(desk, nullptr);
    settle(*desk);
    return *desk;
  }
  static void settle(PageDesk& desk) {
    ASSERT_TRUE(QTest::qWaitFor([&] { return !desk.is_busy(); }, 20000));
    QTest::qWait(1);
  }
  static void tick(PageDesk& desk, const QString& name) {
    auto* box = desk.findChild<QCheckBox*>(name);
    ASSERT_NE(box, nullptr) << name.toStdString();
    QTest::mouseClick(box, Qt::LeftButton, {}, QPoint(8, box->height() / 2));
    settle(desk);
  }
  static std::string titles(const PageDesk& desk) {
    std::string all;
    for (const auto& page : desk.document().pages) all += page.title + "\n";
    return all;
  }

  WindowDriver driver;
  QTemporaryDir folder;
};

TEST_F(PagesTest, ShowsThePlanSheetFirst) {
  driver.draw_ellipse("8", "5");
  PageDesk& desk = open();
  EXPECT_NE(titles(desk).find("Plan sheet"), std::string::npos);
  EXPECT_TRUE(desk.findChild<QPushButton*>("print_pages")->isEnabled());
  EXPECT_FALSE(desk.findChild<QCheckBox*>("pages_mirrored")->isEnabled())
      << "nothing to be mirrored yet";
}

TEST_F(PagesTest, GoesThroughThePagesByKeyAndButton) {
  driver.draw_ellipse("20", "14");
  PageDesk& desk = open();
  tick(desk, "pages_templates");
  const int pages = static_cast<int>(desk.document().pages.size());
  ASSERT_GT(pages, 3);
  const auto place = [&] { return desk.findChild<QLabel*>("page_place")->text(); };
  EXPECT_EQ(place(), QString("Page 1 of %1").arg(pages));
  QTest::mouseClick(desk.findChild<QAbstractButton*>("page_next"), Qt::LeftButton);
  EXPECT_EQ(place(), QString("Page 2 of %1").arg(pages));
  auto* sheet = desk.findChild<QWidget*>("page_sheet");
  QTest::keyClick(sheet, Qt::Key_PageDown);
  EXPECT_EQ(desk.preview().page(), 2);
  QTest::keyClick(sheet, Qt::Key_Left);
  QTest::keyClick(sheet, Qt::Key_PageUp);
  QTest::keyClick(sheet, Qt::Key_PageUp);
  EXPECT_EQ(desk.preview().page(), 0) << "there is none before the first";
}

TEST_F(PagesTest, PrintsEachKindThatIsTicked) {
  driver.draw_ellipse("8", "5");
  PageDesk& desk = open();
  for (const char* name :
       {"pages_record", "pages_labels", "pages_what-to-do", "pages_teaching", "pages_solution",
        "pages_templates", "pages_mirrored", "pages_squares"}) {
    const auto before = desk.document().pages.size();
    const std::string before_titles = titles(desk);
    tick(desk, name);
    const bool more = desk.document().pages.size() > before;
    EXPECT_TRUE(more || std::string(name) == "pages_mirrored") << name;
  }
  EXPECT_NE(titles(desk).find("Application record"), std::string::npos);
  EXPECT_NE(titles(desk).find("Labels for the dressing"), std::string::npos);
}

TEST_F(PagesTest, AsksForSomethingToPrint) {
  driver.draw_ellipse("8", "5");
  PageDesk& desk = open();
  tick(desk, "pages_plan");
  EXPECT_TRUE(desk.document().pages.empty());
  EXPECT_FALSE(desk.findChild<QPushButton*>("print_pages")->isEnabled());
  EXPECT_FALSE(desk.findChild<QPushButton*>("save_pages")->isEnabled());
}

TEST_F(PagesTest, OffersSquaresWhereNothingIsDrawn) {
  PageDesk& desk = open();
  EXPECT_FALSE(desk.findChild<QCheckBox*>("pages_plan")->isEnabled());
  EXPECT_EQ(desk.document().pages.size(), 1u);
}

TEST_F(PagesTest, KeepsPaperAndBars) {
  driver.draw_ellipse("8", "5");
  {
    PageDesk& desk = open();
    auto* paper = desk.findChild<QComboBox*>("pages_paper");
    QTest::keyClick(paper, Qt::Key_Down);
    settle(desk);
    EXPECT_DOUBLE_EQ(desk.document().pages.front().width_mm, 215.9);
    auto* bar = desk.findChild<QWidget*>("pages_bar_across");
    QTest::keyClick(bar, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(bar, "98.5");
    QTest::keyClick(bar, Qt::Key_Tab);
    settle(desk);
    EXPECT_DOUBLE_EQ(desk.settings().wishes().printer.bar_across_mm, 98.5);
    desk.close();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  }
  PageDesk& again = open();
  EXPECT_EQ(again.settings().wishes().paper, report::Paper::letter);
  EXPECT_DOUBLE_EQ(again.settings().wishes().printer.bar_across_mm, 98.5);
}

TEST_F(PagesTest, SavesAPdf) {
  driver.draw_ellipse("8", "5");
  PageDesk& desk = open();
  const QString path = folder.filePath("leg.pdf");
  answering({}, choosing(path),
            [&] { QTest::mouseClick(desk.findChild<QPushButton*>("save_pages"), Qt::LeftButton); });
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  EXPECT_TRUE(file.read(8).startsWith("%PDF"));
}

TEST_F(PagesTest, APrinterGetsThePaperOfEachPage) {
  driver.draw_ellipse("8", "5");
  PageDesk& desk = open();
  QPrinter printer(QPrinter::HighResolution);
  printer.setOutputFormat(QPrinter::PdfFormat);
  printer.setOutputFileName(folder.filePath("printed.pdf"));
  ASSERT_TRUE(desk.print_on(printer));
  const QSizeF paper = printer.pageLayout().fullRect(QPageLayout::Millimeter).size();
  EXPECT_NEAR(paper.width(), 210, 0.2);
  EXPECT_NEAR(paper.height(), 297, 0.2);
  EXPECT_TRUE(printer.fullPage());
}

TEST_F(PagesTest, TellsWhenThePrinterTakesNothing) {
  driver.draw_ellipse("8", "5");
  PageDesk& desk = open();
  QPrinter printer(QPrinter::HighResolution);
  printer.setOutputFormat(QPrinter::PdfFormat);
  printer.setOutputFileName(folder.filePath("no such folder/printed.pdf"));
  EXPECT_FALSE(desk.print_on(printer));
}

}  // namespace
}  // namespace drapewright::desktop_test
