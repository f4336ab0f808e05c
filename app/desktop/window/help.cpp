#include "app/desktop/window/help.h"

#include <QAction>
#include <QApplication>
#include <QDialog>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QVBoxLayout>
#include <utility>
#include <vector>

#include "app/desktop/panels/wrapped_table.h"

namespace drapewright::desktop {
namespace {

using Row = std::pair<QString, QString>;

void collect(const QMenu& menu, std::vector<Row>& rows) {
  for (const QAction* action : menu.actions()) {
    if (action->menu() != nullptr) collect(*action->menu(), rows);
    if (action->shortcut().isEmpty()) continue;
    rows.emplace_back(action->text().remove('&'),
                      action->shortcut().toString(QKeySequence::NativeText));
  }
}

std::vector<Row> shortcut_rows(const QMainWindow& window) {
  std::vector<Row> rows;
  for (const QAction* action : window.menuBar()->actions()) {
    if (action->menu() != nullptr) collect(*action->menu(), rows);
  }
  rows.emplace_back("Move the drawing", "arrow keys, or drag");
  rows.emplace_back("With a drawing tool: move the pen 1 mm; 1 cm", "arrow keys; with Shift");
  rows.emplace_back("Put a point; put the pen down, lift it", "Space");
  rows.emplace_back("Close the outline", "Enter, double click, or the first point");
  rows.emplace_back("Take the last point back", "Backspace");
  rows.emplace_back("Abandon what is being drawn", "Escape");
  rows.emplace_back("No snapping", "Alt held");
  rows.emplace_back("Points: from corner to corner", "Tab in the drawing");
  rows.emplace_back("Points: put one after it; take it out", "Insert; Delete");
  rows.emplace_back("Whole: turn by 1\u00b0; scale by 1 %", "comma, full stop; [ and ]");
  rows.emplace_back("Reach the port in the drawing", "Tab in the drawing");
  rows.emplace_back("Move it 1 mm; 1 cm", "arrow keys; with Shift");
  rows.emplace_back("Give it its automatic place", "Delete");
  rows.emplace_back("Zoom at the cursor", "wheel");
  rows.emplace_back("Change a number by a step", "up and down keys");
  return rows;
}

}  // namespace

const QString standing_sentence =
    "A planning aid: the prescriber, local policy and the device's instructions decide.";

void show_about(QMainWindow& window) {
  auto* box = new QMessageBox(QMessageBox::NoIcon, "About Drapewright",
                              "Drapewright " + QApplication::applicationVersion(),
                              QMessageBox::Close, &window);
  box->setInformativeText(
      "Plans a negative-pressure wound dressing from a traced or typed outline: how to cut the "
      "filler, what film to put over it, where the port may go, and what that takes from the "
      "shelf.\n\n" +
      standing_sentence +
      "\n\nFree software under the GNU General Public License, version 3 or "
      "later; it comes without any warranty.");
  box->setAttribute(Qt::WA_DeleteOnClose);
  box->setModal(false);
  box->show();
}

void show_shortcuts(QMainWindow& window) {
  auto* dialog = new QDialog(&window);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setWindowTitle("Keys");
  auto* table = new WrappedTable("Keys", {"What", "Keys"}, {1, 0}, dialog);
  const auto rows = shortcut_rows(window);
  table->set_rows(static_cast<int>(rows.size()));
  for (int row = 0; row < table->rowCount(); ++row) {
    table->cell(row, 0).setText(rows[static_cast<std::size_t>(row)].first);
    table->cell(row, 1).setText(rows[static_cast<std::size_t>(row)].second);
  }
  (new QVBoxLayout(dialog))->addWidget(table);
  dialog->resize(440, 480);
  dialog->show();
}

}  // namespace drapewright::desktop
