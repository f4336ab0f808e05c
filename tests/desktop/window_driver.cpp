#include "tests/desktop/window_driver.h"

#include <QAbstractButton>
#include <QApplication>
#include <QDate>
#include <QFileDialog>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTableView>
#include <QTableWidget>
#include <QTest>
#include <QTimer>
#include <stdexcept>

#include "app/desktop/window/file_desk.h"
#include "tests/support/places.h"

namespace drapewright::desktop_test {
namespace {

constexpr int patience_ms = 10000;

void select_all_in(QWidget& field) {
  if (auto* line = qobject_cast<QLineEdit*>(&field)) line->selectAll();
  if (auto* spin = qobject_cast<QAbstractSpinBox*>(&field)) spin->selectAll();
}

QString words_of(QWidget& dialog) {
  if (auto* box = qobject_cast<QMessageBox*>(&dialog)) {
    return box->text() + "\n" + box->informativeText();
  }
  return dialog.windowTitle();
}

}  // namespace

WindowDriver::WindowDriver() : window_(QDate::currentDate().toString(Qt::ISODate)) {
  window_.show();
  if (!QTest::qWaitForWindowExposed(&window_)) throw std::runtime_error("the window stays hidden");
  window_.activateWindow();
}

void WindowDriver::show_tab_of(QWidget& widget) {
  for (auto* tabs : window_.findChildren<QTabWidget*>()) {
    for (int i = 0; i < tabs->count(); ++i) {
      if (tabs->widget(i)->isAncestorOf(&widget)) tabs->setCurrentIndex(i);
    }
  }
}

void WindowDriver::type_only(const QString& name, const QString& text) {
  auto& field = find<QWidget>(name);
  QTest::mouseClick(&field, Qt::LeftButton, {}, {8, field.height() / 2});
  field.setFocus();
  select_all_in(field);
  QTest::keyClicks(&field, text);
}

void WindowDriver::type(const QString& name, const QString& text) {
  type_only(name, text);
  QTest::keyClick(&find<QWidget>(name), Qt::Key_Return);
  settle();
}

void WindowDriver::click(const QString& name) {
  auto& button = find<QAbstractButton>(name);
  QTest::mouseClick(&button, Qt::LeftButton, {}, {8, button.height() / 2});
  settle();
}

void WindowDriver::type_cell(const QString& name, int row, int column, const QString& text) {
  auto& table = find<QTableView>(name);
  table.setFocus();
  table.setCurrentIndex(table.model()->index(row, column));
  QTest::keyClick(&table, Qt::Key_F2);
  auto* cell = table.viewport()->findChild<QLineEdit*>();
  if (cell == nullptr) throw std::logic_error("F2 does not open the cell");
  QTest::keyClicks(cell, text);
  QTest::keyClick(cell, Qt::Key_Return);
  QTest::qWait(1);  // the cell is committed and closed once the key was dealt with
  settle();
}

void WindowDriver::press(const QKeySequence& keys) {
  QTest::keySequence(&window_, keys);
  settle();
}

void WindowDriver::settle() {
  if (!QTest::qWaitFor([&] { return window_.is_up_to_date(); }, patience_ms)) {
    throw std::runtime_error("the plan did not come");
  }
}

void WindowDriver::draw_ellipse(const QString& length, const QString& width) {
  type("length_cm", length);
  type("width_cm", width);
}

QString WindowDriver::measure(const QString& name) {
  const auto& table = find<QTableWidget>("measures");
  for (int row = 0; row < table.rowCount(); ++row) {
    if (table.item(row, 0)->text() == name) return table.item(row, 1)->text();
  }
  return {};
}

QString WindowDriver::piece_count() { return find<QLabel>("piece_count").text(); }

bool WindowDriver::open(const QString& path) {
  const QSignalSpy ended(&window_.files(), &desktop::FileDesk::reading_ended);
  window_.files().open_path(path);
  if (!QTest::qWaitFor([&] { return !ended.isEmpty(); }, patience_ms)) {
    throw std::runtime_error("the file is never read");
  }
  settle();
  return ended.front().front().toBool();
}

bool WindowDriver::open_demo_file(const QString& name) {
  return open(QString::fromStdString(support::project_folder()) + "/demo_cases/" + name);
}

QString answering(const QString& name, const std::function<void(QWidget&)>& answer,
                  const std::function<void()>& act) {
  QString words;
  QTimer look;
  look.setInterval(20);
  QObject::connect(&look, &QTimer::timeout, [&] {
    QWidget* dialog = QApplication::activeModalWidget();
    if (dialog == nullptr || (!name.isEmpty() && dialog->objectName() != name)) return;
    words += words_of(*dialog);
    answer(*dialog);
  });
  look.start();
  act();
  return words;
}

std::function<void(QWidget&)> clicking(const QString& text) {
  return [text](QWidget& dialog) {
    for (auto* button : dialog.findChildren<QAbstractButton*>()) {
      if (button->text().remove('&') == text) {
        QTest::mouseClick(button, Qt::LeftButton);
        return;
      }
    }
    throw std::logic_error("no button says " + text.toStdString());
  };
}

std::function<void(QWidget&)> choosing(const QString& path) {
  return [path](QWidget& dialog) {
    auto* name = dialog.findChild<QLineEdit*>("fileNameEdit");
    name->setText(path);
    QTest::keyClick(name, Qt::Key_Return);
  };
}

}  // namespace drapewright::desktop_test
