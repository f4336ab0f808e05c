// File > Export: files for other programs.
#include <gtest/gtest.h>

#include <QAction>
#include <QFile>
#include <QTemporaryDir>
#include <QTest>

#include "core/casefile/exchange.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

struct ExportTest : testing::Test {
  QAction& action(const QString& name) {
    auto* found = driver.window().findChild<QAction*>(name);
    if (found == nullptr) throw std::logic_error("no action is called " + name.toStdString());
    return *found;
  }

  /// By the menu, to a file of that name; waits for it, as it is made in the background.
  std::string exported(const QString& action_name, const QString& file_name) {
    const QString path = folder.filePath(file_name);
    answering({}, choosing(path), [&] { action(action_name).trigger(); });
    EXPECT_TRUE(QTest::qWaitFor([&] { return QFile::exists(path); }, 20000)) << path.toStdString();
    EXPECT_TRUE(QTest::qWaitFor([&] { return action(action_name).isEnabled(); }, 5000));
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    return file.readAll().toStdString();
  }

  QTemporaryDir folder;
  WindowDriver driver;
};

TEST_F(ExportTest, WritesWhatTheWindowShows) {
  ASSERT_TRUE(driver.open_demo_file("series-of-three.json"));
  driver.settle();
  const std::string fhir = exported("export_fhir", "leg-fhir.json");
  const std::string measures = exported("export_measures", "leg.csv");
  const std::string materials = exported("export_materials", "leg-materials.csv");
  const wound::Case& value = driver.document().value();
  const dressing::Plan& plan = *driver.window().result().plan;
  const auto over_time = casefile::measures_over_time(value, plan);
  ASSERT_EQ(over_time.size(), 3u);
  EXPECT_EQ(fhir, casefile::fhir_bundle(value, over_time));
  EXPECT_EQ(measures, casefile::measures_csv(value, over_time));
  EXPECT_EQ(materials, casefile::materials_csv(plan));
  EXPECT_FALSE(driver.document().is_modified());
}

TEST_F(ExportTest, WritesTheCutLayoutThatIsShown) {
  ASSERT_TRUE(driver.open_demo_file("plain-heel.json"));
  driver.settle();
  const std::string dxf = exported("export_cut", "leg.dxf");
  EXPECT_EQ(dxf, casefile::cut_dxf(*driver.window().result().plan));
}

TEST_F(ExportTest, IsNotOfferedBeforeThereIsAPlan) {
  const QStringList names{"export_fhir", "export_measures", "export_materials", "export_cut"};
  for (const QString& name : names) EXPECT_FALSE(action(name).isEnabled()) << name.toStdString();
  driver.draw_ellipse("8", "5");
  driver.settle();
  for (const QString& name : names) EXPECT_TRUE(action(name).isEnabled()) << name.toStdString();
}

TEST_F(ExportTest, SaysWhyThereIsNothingToCut) {
  driver.draw_ellipse("0.5", "0.4");
  driver.settle();
  ASSERT_TRUE(driver.window().result().plan->cut_layout.empty());
  const QString path = folder.filePath("leg.dxf");
  answering({}, choosing(path), [&] { action("export_cut").trigger(); });
  const QString words = answering({}, clicking("OK"), [&] {
    EXPECT_TRUE(QTest::qWaitFor([&] { return action("export_cut").isEnabled(); }, 5000));
  });
  EXPECT_TRUE(words.contains("cuts no sheet")) << words.toStdString();
  EXPECT_FALSE(QFile::exists(path));
}

}  // namespace
}  // namespace drapewright::desktop_test
