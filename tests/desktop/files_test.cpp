// Opening, saving, and never losing work.
#include <gtest/gtest.h>

#include <QAction>
#include <QCloseEvent>
#include <QDate>
#include <QDialog>
#include <QDir>
#include <QFile>
#include <QFileDialog>
#include <QImage>
#include <QLabel>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableWidget>
#include <QTemporaryDir>
#include <QTest>
#include <cmath>

#include "app/desktop/window/file_desk.h"
#include "core/geometry/measures.h"
#include "tests/desktop/window_driver.h"
#include "tests/support/places.h"

namespace drapewright::desktop_test {
namespace {

QStringList cells(const QTableWidget& table) {
  QStringList all;
  for (int row = 0; row < table.rowCount(); ++row) {
    for (int column = 0; column < table.columnCount(); ++column) {
      all << table.item(row, column)->text();
    }
  }
  return all;
}

QByteArray content(const QString& path) {
  QFile file(path);
  file.open(QIODevice::ReadOnly);
  return file.readAll();
}

void write(const QString& path, const QByteArray& bytes) {
  QFile file(path);
  file.open(QIODevice::WriteOnly);
  file.write(bytes);
}

struct FilesTest : testing::Test {
  QString at(const QString& name) const { return folder.filePath(name); }
  void save_as(WindowDriver& driver, const QString& path) {
    answering({}, choosing(path), [&] { driver.press(QKeySequence("Ctrl+Shift+S")); });
  }

  QTemporaryDir folder;
};

TEST_F(FilesTest, SavedAndReopenedGivesTheSameFigures) {
  QStringList measures, materials;
  {
    WindowDriver driver;
    driver.draw_ellipse("8", "5");
    driver.type("border_cm", "4.5");
    save_as(driver, at("case.json"));
    ASSERT_TRUE(QFile::exists(at("case.json")));
    EXPECT_FALSE(driver.document().is_modified());
    measures = cells(driver.find<QTableWidget>("measures"));
    materials = cells(driver.find<QTableWidget>("materials"));
  }
  WindowDriver driver;
  ASSERT_TRUE(driver.open(at("case.json")));
  EXPECT_EQ(cells(driver.find<QTableWidget>("measures")), measures);
  EXPECT_EQ(cells(driver.find<QTableWidget>("materials")), materials);
  EXPECT_GT(materials.size(), 8);
}

TEST_F(FilesTest, BrokenFileLeavesTheOpenCase) {
  write(at("broken.json"), "{\n  \"drapewright_case\": 1,\n  \"label\": \"x\",,\n}\n");
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  const auto before = driver.document().shared();
  bool opened = true;
  const QString words =
      answering("fault", clicking("OK"), [&] { opened = driver.open(at("broken.json")); });
  EXPECT_FALSE(opened);
  EXPECT_TRUE(words.contains("broken.json")) << words.toStdString();
  EXPECT_TRUE(words.contains("line 3")) << words.toStdString();
  EXPECT_EQ(driver.document().shared(), before);
  EXPECT_EQ(driver.measure("Area"), "31.4 cm²");
  EXPECT_TRUE(driver.document().is_modified());
}

TEST_F(FilesTest, FailedSaveKeepsTheFileAndTheWindow) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  save_as(driver, at("case.json"));
  const QByteArray saved = content(at("case.json"));
  driver.type("border_cm", "4");
  const auto before = driver.document().shared();
  // A folder in the file's place cannot be written over, whoever runs this.
  QDir(folder.path()).mkdir("taken.json");
  write(at("taken.json/inside"), "x");
  EXPECT_THROW(driver.document().save_as(at("taken.json")), InputError);
  EXPECT_THROW(driver.document().save_as(at("no/such/x.json")), InputError);
  EXPECT_EQ(content(at("case.json")), saved);
  EXPECT_EQ(driver.document().shared(), before);
  EXPECT_TRUE(driver.document().is_modified());
  EXPECT_EQ(driver.document().path(), at("case.json"));
}

TEST_F(FilesTest, FailedSaveIsTold) {
  const QString path = at("gone/case.json");
  QDir(folder.path()).mkdir("gone");
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  save_as(driver, path);
  driver.type("border_cm", "4");
  QDir(at("gone")).removeRecursively();
  bool saved = true;
  const QString words =
      answering("fault", clicking("OK"), [&] { saved = driver.window().files().save(); });
  EXPECT_FALSE(saved);
  EXPECT_TRUE(words.contains("was not saved")) << words.toStdString();
  EXPECT_TRUE(driver.document().is_modified());
}

TEST_F(FilesTest, ClosingWithChangesAsks) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  answering("unsaved", clicking("Cancel"), [&] { EXPECT_FALSE(driver.window().close()); });
  EXPECT_TRUE(driver.window().isVisible());
  const QString words =
      answering("unsaved", clicking("Discard"), [&] { EXPECT_TRUE(driver.window().close()); });
  EXPECT_TRUE(words.contains("Save the changes"));
}

TEST_F(FilesTest, ClosingAndSavingSaves) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  save_as(driver, at("case.json"));
  driver.type("border_cm", "4");
  answering("unsaved", clicking("Save"), [&] { EXPECT_TRUE(driver.window().close()); });
  EXPECT_TRUE(content(at("case.json")).contains("\"border_cm\": 4"));
}

TEST_F(FilesTest, ClosingWithoutChangesDoesNotAsk) {
  WindowDriver driver;
  EXPECT_TRUE(driver.window().close());
}

TEST_F(FilesTest, NewCaseAsksAndThenIsEmpty) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  answering("unsaved", clicking("Discard"), [&] { driver.window().files().start_new(); });
  EXPECT_FALSE(driver.document().has_wounds());
  EXPECT_EQ(driver.document().value().current().date,
            QDate::currentDate().toString(Qt::ISODate).toStdString());
  EXPECT_EQ(driver.document().undo_stack().count(), 0);
}

TEST_F(FilesTest, DemosHaveNoFileOfTheirOwn) {
  WindowDriver driver;
  ASSERT_TRUE(driver.window().files().open_demo("plain-heel"));
  driver.settle();
  EXPECT_TRUE(driver.document().path().isEmpty()) << "saving must not write over the demo";
  EXPECT_TRUE(driver.window().result().plan);
}

TEST_F(FilesTest, CsvIsWhatThePanelShows) {
  WindowDriver driver;
  ASSERT_TRUE(driver.open_demo_file("plain-heel.json"));
  const auto& table = driver.find<QTableWidget>("materials");
  ASSERT_GT(table.rowCount(), 5);
  answering({}, choosing(at("list.csv")), [&] { driver.press(QKeySequence("Ctrl+Shift+M")); });
  const QStringList lines = QString::fromUtf8(content(at("list.csv"))).split("\r\n");
  ASSERT_EQ(lines.size(), table.rowCount() / 2 + 2) << "titles, lines, and the last line's end";
  const auto as_in_csv = [](QString cell) { return cell.replace('"', "\"\""); };
  for (int row = 0; row < table.rowCount(); row += 2) {
    const QString& line = lines[row / 2 + 1];
    for (int column = 0; column < 3; ++column) {
      EXPECT_TRUE(line.contains(as_in_csv(table.item(row, column)->text()))) << line.toStdString();
    }
    EXPECT_TRUE(line.contains(as_in_csv(table.item(row + 1, 0)->text()))) << line.toStdString();
  }
}

/// A case file of some megabytes: a long outline, spelt with many digits.
QByteArray large_case() {
  QByteArray points;
  constexpr int count = 60000;
  for (int i = 0; i < count; ++i) {
    const double angle = 2 * 3.14159265358979 * i / count;
    points += QString("%1[%2, %3]")
                  .arg(i > 0 ? "," : "")
                  .arg(4 * std::cos(angle), 0, 'f', 15)
                  .arg(3 * std::sin(angle), 0, 'f', 15)
                  .toUtf8();
  }
  return R"({"drapewright_case": 1, "label": "large", "assessments": [{"date": "2026-05-04",
            "wounds": [{"id": "W1", "outline_cm": [)" +
         points + "]}]}]}";
}

TEST_F(FilesTest, WhatIsOpenStaysUntilTheNewCaseIsRead) {
  write(at("large.json"), large_case());
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  const auto before = driver.document().shared();
  driver.window().files().open_path(at("large.json"));
  EXPECT_TRUE(driver.window().files().is_reading()) << "the window does not wait";
  EXPECT_EQ(driver.document().shared(), before);
  auto& cancel = driver.find<QPushButton>("cancel_reading");
  ASSERT_TRUE(QTest::qWaitFor([&] { return cancel.isVisible(); }, 5000));
  QTest::mouseClick(&cancel, Qt::LeftButton);
  EXPECT_FALSE(driver.window().files().is_reading());
  EXPECT_FALSE(cancel.isVisible());
  QTest::qWait(300);
  EXPECT_EQ(driver.document().shared(), before) << "a file given up never comes";
}

TEST_F(FilesTest, WorkDoneWhileReadingIsAskedFor) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  save_as(driver, at("case.json"));
  driver.window().files().open_path(QString::fromStdString(support::project_folder()) +
                                    "/demo_cases/plain-heel.json");
  driver.document().edit("border", {}, [](wound::Case& value) { value.dressing.border_cm = 4; });
  const auto changed = driver.document().shared();
  const QSignalSpy ended(&driver.window().files(), &desktop::FileDesk::reading_ended);
  answering("unsaved", clicking("Cancel"),
            [&] { EXPECT_TRUE(QTest::qWaitFor([&] { return !ended.isEmpty(); }, 5000)); });
  ASSERT_EQ(ended.count(), 1);
  EXPECT_FALSE(ended.front().front().toBool());
  EXPECT_EQ(driver.document().shared(), changed);
}

TEST_F(FilesTest, EveryDemoCaseOpensAndIsPlanned) {
  const QDir demos(QString::fromStdString(support::project_folder()) + "/demo_cases");
  WindowDriver driver;
  for (const QString& name : demos.entryList({"*.json"})) {
    EXPECT_TRUE(driver.open_demo_file(name)) << name.toStdString();
    EXPECT_TRUE(driver.window().result().plan) << name.toStdString();
    EXPECT_FALSE(driver.document().is_modified())
        << name.toStdString() << " was changed by showing";
  }
}

struct OutlineFilesTest : FilesTest {
  /// By the menu, with a path chosen; whatever else comes up is answered by `then`.
  QString open_outlines(const QString& path, const std::function<void(QWidget&)>& then = {}) {
    return answering(
        {},
        [&](QWidget& dialog) {
          qobject_cast<QFileDialog*>(&dialog) ? choosing(path)(dialog) : then(dialog);
        },
        [&] { driver.window().findChild<QAction*>("open_outlines")->trigger(); });
  }

  WindowDriver driver;
};

TEST_F(OutlineFilesTest, OfAnotherProgramBecomeWoundsInOneStep) {
  write(at("two.svg"),
        "<svg width='200mm' height='100mm' viewBox='0 0 200 100'>"
        "<path d='M0 0h80v50h-80z M20 20h10v10h-10z M100 0h20v20h-20z'/></svg>");
  open_outlines(at("two.svg"));
  const auto& wounds = driver.document().value().current().wounds;
  ASSERT_EQ(wounds.size(), 2);
  EXPECT_EQ(wounds[0].islands_cm.size(), 1);
  EXPECT_NEAR(geometry::area(wounds[0].outline_cm), 40, 1e-9);
  EXPECT_EQ(driver.document().undo_stack().count(), 1);
  driver.document().undo_stack().undo();
  EXPECT_FALSE(driver.document().has_wounds());
}

TEST_F(OutlineFilesTest, AreAskedForTheirUnitOrLeftAlone) {
  write(at("leg.wkt"), "POLYGON ((0 0, 80 0, 80 50, 0 50, 0 0))");
  const auto answer = [](bool accept) {
    return [accept](QWidget& dialog) {
      auto& question = dynamic_cast<QDialog&>(dialog);
      EXPECT_EQ(question.objectName(), "unit_of_outlines");
      accept ? question.accept() : question.reject();
    };
  };
  open_outlines(at("leg.wkt"), answer(false));
  EXPECT_FALSE(driver.document().has_wounds());
  open_outlines(at("leg.wkt"), answer(true));  // mm come first
  ASSERT_TRUE(driver.document().has_wounds());
  EXPECT_NEAR(geometry::area(driver.document().value().current().wounds[0].outline_cm), 40, 1e-9);
}

TEST_F(OutlineFilesTest, ThatCannotBeUsedSayWhyAndChangeNothing) {
  write(at("bad.svg"),
        "<svg width='9cm' height='9cm' viewBox='0 0 9 9'><path d='M0 0L5 5L5 0L0 5Z'/></svg>");
  const QString words = open_outlines(at("bad.svg"), clicking("OK"));
  EXPECT_TRUE(words.contains("crosses itself")) << words.toStdString();
  EXPECT_FALSE(driver.document().has_wounds());
}

TEST_F(OutlineFilesTest, GoOutAndComeBackAsTheyWere) {
  driver.draw_ellipse("8", "5");
  const auto before = driver.document().value().current().wounds[0].outline_cm;
  answering({}, choosing(at("out.geojson")),
            [&] { driver.window().findChild<QAction*>("save_outlines")->trigger(); });
  open_outlines(at("out.geojson"));
  ASSERT_EQ(driver.document().value().current().wounds.size(), 2);
  EXPECT_EQ(driver.document().value().current().wounds[1].outline_cm, before);
}

TEST_F(FilesTest, TheDrawingIsSavedAsSvgAndAsPng) {
  WindowDriver driver;
  ASSERT_TRUE(driver.open_demo_file("plain-heel.json"));
  driver.settle();
  auto* save = driver.window().findChild<QAction*>("save_drawing");
  for (const QString& name : {QString("drawing.svg"), QString("drawing.png")}) {
    const QString path = folder.filePath(name);
    answering({}, choosing(path), [&] { save->trigger(); });
    EXPECT_FALSE(QImage(path).isNull()) << name.toStdString();
  }
}

}  // namespace
}  // namespace drapewright::desktop_test
