// The menus of MainWindow; apart, because they are a list and the window is a machine.
#include <QAction>
#include <QFileInfo>
#include <QMenu>
#include <QMenuBar>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/document/demo_cases.h"
#include "app/desktop/panels/materials_panel.h"
#include "app/desktop/panels/port_place_row.h"
#include "app/desktop/tools/tool_row.h"
#include "app/desktop/window/appearance.h"
#include "app/desktop/window/drawing_pane.h"
#include "app/desktop/window/export_desk.h"
#include "app/desktop/window/file_desk.h"
#include "app/desktop/window/help.h"
#include "app/desktop/window/main_window.h"
#include "app/desktop/window/outline_desk.h"
#include "app/desktop/window/result_pane.h"
#include "app/wording/spoken.h"
#include "core/report/plan_drawing.h"

namespace drapewright::desktop {

void MainWindow::build_file_menu() {
  QMenu* menu = menuBar()->addMenu(spoken("&File"));
  menu->addAction(spoken("&New"), QKeySequence::New, files_, &FileDesk::start_new);
  menu->addAction(spoken("&Open…"), QKeySequence::Open, files_, &FileDesk::open);
  QAction* photo = menu->addAction(spoken("Open a p&hotograph…"), QKeySequence("Ctrl+Shift+O"),
                                   this, &MainWindow::open_photo);
  photo->setToolTip(
      spoken("PNG or JPEG, laid under the drawing; give it a scale, then trace over it."));
  QAction* outlines = menu->addAction(spoken("Open out&lines…"), outlines_, &OutlineDesk::open);
  outlines->setObjectName("open_outlines");
  outlines->setToolTip(
      spoken("WKT, GeoJSON, SVG paths or CSV of another program, added as wounds."));
  QMenu* recent = menu->addMenu(spoken("Open &recent"));
  connect(recent, &QMenu::aboutToShow, this, [this, recent] { fill_recent(*recent); });
  QMenu* demos = menu->addMenu(spoken("Open a &demo"));
  for (const auto& demo : demo_cases()) {
    demos->addAction(demo.title, this, [this, demo] { files_->open_demo(demo.name); });
  }
  demos->setEnabled(!demos->isEmpty());
  menu->addSeparator();
  menu->addAction(spoken("&Save"), QKeySequence::Save, files_, &FileDesk::save);
  menu->addAction(spoken("Save &as…"), QKeySequence("Ctrl+Shift+S"), files_, &FileDesk::save_as);
  menu->addAction(spoken("Save ou&tlines as…"), outlines_, &OutlineDesk::save_as)
      ->setObjectName("save_outlines");
  QAction* picture =
      menu->addAction(spoken("Save dra&wing…"), QKeySequence("Ctrl+Shift+D"), this, [this] {
        if (result_.plan) files_->save_picture(report::draw_plan(*result_.planned, *result_.plan));
      });
  picture->setObjectName("save_drawing");
  picture->setToolTip(spoken("The drawing to scale, as SVG or PNG."));
  const auto offer = [this, picture] { picture->setEnabled(result_.plan != nullptr); };
  connect(this, &MainWindow::planned, picture, offer);
  offer();
  menu->addAction(spoken("Save &materials list…"), QKeySequence("Ctrl+Shift+M"),
                  &results_->materials(), &MaterialsPanel::save_wanted);
  exports_->add_to(*menu->addMenu(spoken("E&xport")));
  connect(this, &MainWindow::planned, exports_, &ExportDesk::offer);
  menu->addSeparator();
  QAction* pages = menu->addAction(spoken("Pages and p&rinting…"), QKeySequence::Print, this,
                                   [this] { open_pages(); });
  pages->setObjectName("print");
  pages->setToolTip(
      spoken("Plan sheet, cutting templates at life size, application record, labels."));
  menu->addSeparator();
  menu->addAction(spoken("S&tores…"), QKeySequence("Ctrl+T"), this, [this] { open_stores(); });
  menu->addSeparator();
  menu->addAction(spoken("&Quit"), QKeySequence("Ctrl+Q"), this, &QWidget::close);
}

void MainWindow::fill_recent(QMenu& menu) {
  menu.clear();
  for (const QString& path : files_->recent()) {
    QAction* action = menu.addAction(QFileInfo(path).fileName(), this, [this, path] {
      if (files_->may_leave()) files_->open_path(path);
    });
    action->setToolTip(path);
  }
  if (menu.isEmpty()) menu.addAction(spoken("None yet"))->setEnabled(false);
}

void MainWindow::build_edit_menu() {
  QMenu* menu = menuBar()->addMenu(spoken("&Edit"));
  QAction* undo = document_.undo_stack().createUndoAction(this, spoken("&Undo"));
  undo->setShortcut(QKeySequence::Undo);
  QAction* redo = document_.undo_stack().createRedoAction(this, spoken("&Redo"));
  redo->setShortcuts({QKeySequence("Ctrl+Shift+Z"), QKeySequence("Ctrl+Y")});
  menu->addAction(undo);
  menu->addAction(redo);
  menu->addSeparator();
  QAction* automatic = menu->addAction(spoken("&Automatic port places"), this,
                                       [this] { take_back_port_places(document_); });
  automatic->setObjectName("automatic_ports");
  automatic->setToolTip(
      spoken("Take the chosen places back: each port goes where it has the most room."));
  const auto follow = [this, automatic] {
    automatic->setEnabled(!document_.value().dressing.port_places_cm.empty());
  };
  connect(&document_, &CaseDocument::case_changed, automatic, follow);
  follow();
  menu->addAction(spoken("&Paste photograph"), QKeySequence("Ctrl+Shift+V"), this,
                  &MainWindow::paste_photo);
  menu->addAction(spoken("&Copy materials list"), QKeySequence("Ctrl+Shift+C"),
                  &results_->materials(), &MaterialsPanel::copy);
}

void MainWindow::build_draw_menu() {
  QMenu* menu = menuBar()->addMenu(spoken("&Draw"));
  drawing_->tools().add_to(*menu);
}

void MainWindow::build_view_menu() {
  QMenu* menu = menuBar()->addMenu(spoken("&View"));
  menu->addAction(spoken("&Fit to window"), QKeySequence("Ctrl+0"), &plan_view(), &PlanView::fit);
  QAction* closer =
      menu->addAction(spoken("Zoom &in"), QKeySequence("Ctrl++"), &plan_view(), &PlanView::zoom_in);
  closer->setShortcuts({QKeySequence("Ctrl++"), QKeySequence("Ctrl+=")});
  menu->addAction(spoken("Zoom &out"), QKeySequence("Ctrl+-"), &plan_view(), &PlanView::zoom_out);
  menu->addMenu(&drawing_->layers());
  menu->addAction(&drawing_->section_switch());
  menu->addSeparator();
  appearance_->add_to(*menu);
}

void MainWindow::build_help_menu() {
  QMenu* menu = menuBar()->addMenu(spoken("&Help"));
  menu->addAction(spoken("&Keys"), QKeySequence("F1"), this, [this] { show_shortcuts(*this); });
  menu->addAction(spoken("&About"), this, [this] { show_about(*this); });
}

}  // namespace drapewright::desktop
