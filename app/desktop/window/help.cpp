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
#include "app/wording/spoken.h"

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
  rows.emplace_back(spoken("Move the drawing"), spoken("arrow keys, or drag"));
  rows.emplace_back(spoken("With a drawing tool: move the pen 1 mm; 1 cm"),
                    spoken("arrow keys; with Shift"));
  rows.emplace_back(spoken("Put a point; put the pen down, lift it"), spoken("Space"));
  rows.emplace_back(spoken("Close the outline"), spoken("Enter, double click, or the first point"));
  rows.emplace_back(spoken("Take the last point back"), spoken("Backspace"));
  rows.emplace_back(spoken("Abandon what is being drawn"), spoken("Escape"));
  rows.emplace_back(spoken("No snapping"), spoken("Alt held"));
  rows.emplace_back(spoken("Points: from corner to corner"), spoken("Tab in the drawing"));
  rows.emplace_back(spoken("Points: put one after it; take it out"), spoken("Insert; Delete"));
  rows.emplace_back(spoken("Whole: turn by 1\u00b0; scale by 1 %"),
                    spoken("comma, full stop; [ and ]"));
  rows.emplace_back(spoken("Reach the port in the drawing"), spoken("Tab in the drawing"));
  rows.emplace_back(spoken("Move it 1 mm; 1 cm"), spoken("arrow keys; with Shift"));
  rows.emplace_back(spoken("Give it its automatic place"), spoken("Delete"));
  rows.emplace_back(spoken("Zoom at the cursor"), spoken("wheel"));
  rows.emplace_back(spoken("Change a number by a step"), spoken("up and down keys"));
  return rows;
}

}  // namespace

QString standing_sentence() {
  return spoken(
      "A planning aid: the prescriber, local policy and the device's instructions decide.");
}

void show_about(QMainWindow& window) {
  auto* box = new QMessageBox(QMessageBox::NoIcon, spoken("About Drapewright"),
                              "Drapewright " + QApplication::applicationVersion(),
                              QMessageBox::Close, &window);
  box->setInformativeText(
      spoken(
          "Plans a negative-pressure wound dressing from a traced or typed outline: how to cut the "
          "filler, what film to put over it, where the port may go, and what that takes from the "
          "shelf.") +
      "\n\n" + standing_sentence() + "\n\n" +
      spoken("Free software under the GNU General Public License, version 3 or "
             "later; it comes without any warranty."));
  box->setAttribute(Qt::WA_DeleteOnClose);
  box->setModal(false);
  box->show();
}

void show_shortcuts(QMainWindow& window) {
  auto* dialog = new QDialog(&window);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setWindowTitle(spoken("Keys"));
  auto* table = new WrappedTable(spoken("Keys"), {spoken("What"), spoken("Keys")}, {1, 0}, dialog);
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
