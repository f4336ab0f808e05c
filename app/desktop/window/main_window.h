#pragma once

#include <QMainWindow>
#include <QTimer>

#include "app/desktop/document/case_document.h"
#include "app/desktop/jobs/plan_job.h"

class QLabel;
class QMenu;
class QProgressBar;
class QSplitter;
class QTabWidget;

namespace drapewright::desktop {

class Appearance;
class DrawingPane;
class ExportDesk;
class FileDesk;
class OutlineDesk;
class PageDesk;
class PlanView;
class PortTool;
class RecordPage;
class ResultPane;
class SheetsPage;
class StoresWindow;
class WoundPage;

/// The one window, in the order of the work: what was seen, the drawing, what to do.
class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  /// @param today YYYY-MM-DD, the date of a new case
  explicit MainWindow(const QString& today, QWidget* parent = nullptr);
  ~MainWindow() override;

  CaseDocument& document() { return document_; }
  FileDesk& files() { return *files_; }
  PlanView& plan_view();
  SheetsPage& sheets() { return *sheets_; }
  DrawingPane& drawing() { return *drawing_; }
  const PortTool& port_tool() const { return *port_tool_; }
  /// Takes up the place, size and panes of the last run, and keeps those of this one on closing.
  /// Without a last run: as large as the text needs.
  void keep_layout();
  /// The latest plan, or why there is none.
  const PlanResult& result() const { return result_; }
  /// Shows the stores' window, which is made when it is first asked for.
  StoresWindow& open_stores();
  /// Shows what can be printed of the latest plan.
  PageDesk& open_pages();
  /// Whether what is shown belongs to the case as it is now.
  bool is_up_to_date() const;

 signals:
  void planned();

 protected:
  void changeEvent(QEvent* event) override;
  void closeEvent(QCloseEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  void fit_to_screen();
  void build_panes(const QString& today);
  void build_tools();
  void build_status_bar();
  void build_file_menu();
  void build_edit_menu();
  void build_draw_menu();
  void build_view_menu();
  void build_help_menu();
  void fill_recent(QMenu& menu);
  void connect_parts();
  void replan();
  void forget();
  void take(const PlanResult& result);
  void take_better_cut(const PlanResult& result);
  void show_late();
  void show_title();
  void mark_cautions();
  void open_photo();
  void paste_photo();
  void show_cursor(QPointF cm, double hour);

  CaseDocument document_;
  PlanJob job_;
  PlanResult result_;
  QTimer late_;  ///< runs out when a plan takes long enough to be waited for
  FileDesk* files_;
  OutlineDesk* outlines_;
  ExportDesk* exports_;
  Appearance* appearance_;
  bool keeps_layout_ = false;
  QSplitter* panes_ = nullptr;
  QTabWidget* seen_ = nullptr;
  WoundPage* wound_page_ = nullptr;
  QTabWidget* shown_ = nullptr;
  DrawingPane* drawing_ = nullptr;
  SheetsPage* sheets_ = nullptr;
  RecordPage* record_ = nullptr;
  ResultPane* results_ = nullptr;
  QProgressBar* progress_ = nullptr;
  QLabel* cursor_ = nullptr;
  StoresWindow* stores_ = nullptr;  ///< beside this one, and gone with it
  PortTool* port_tool_ = nullptr;   ///< the view owns it
};

}  // namespace drapewright::desktop
