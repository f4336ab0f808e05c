#pragma once

#include <QString>
#include <functional>

#include "app/desktop/window/main_window.h"

class QAbstractButton;
class QTableWidget;
class QWidget;

namespace drapewright::desktop_test {

/// Works the real window with mouse and keys, as a user does.
class WindowDriver {
 public:
  WindowDriver();

  desktop::MainWindow& window() { return window_; }
  desktop::CaseDocument& document() { return window_.document(); }

  /// The widget of that object name; shown, so that it can be typed into.
  template <class Widget>
  Widget& find(const QString& name) {
    auto* widget = window_.findChild<Widget*>(name);
    if (widget == nullptr) throw std::logic_error("no widget is called " + name.toStdString());
    show_tab_of(*widget);
    return *widget;
  }
  /// Clicks into the field, replaces what is there, and presses Enter.
  void type(const QString& field, const QString& text);
  /// The same without Enter.
  void type_only(const QString& field, const QString& text);
  void click(const QString& button);
  /// Opens the table's cell with F2, types, and presses Enter.
  void type_cell(const QString& table, int row, int column, const QString& text);
  void press(const QKeySequence& keys);
  /// Waits until what is shown is the plan of the case as it is.
  void settle();

  /// Length x width in cm, to an ellipse, by the keyboard.
  void draw_ellipse(const QString& length, const QString& width);
  /// The text of a measure's value: "31.4 cm²".
  QString measure(const QString& name);
  QString piece_count();
  /// Opens a file and waits for it. @return whether it was opened
  bool open(const QString& path);
  /// Opens one of the demo cases' files.
  bool open_demo_file(const QString& name);

 private:
  void show_tab_of(QWidget& widget);

  desktop::MainWindow window_;
};

/// Answers the next modal dialogs of that object name (any, when empty) while `act` runs.
/// @return the text of the dialogs that came up, joined
QString answering(const QString& name, const std::function<void(QWidget&)>& answer,
                  const std::function<void()>& act);
/// Clicks the message box's button with that text.
std::function<void(QWidget&)> clicking(const QString& button);
/// Types a path into the file dialog and accepts it.
std::function<void(QWidget&)> choosing(const QString& path);

}  // namespace drapewright::desktop_test
