#pragma once

#include <QWidget>

#include "app/desktop/jobs/plan_result.h"

class QAction;
class QMenu;
class QStackedWidget;

namespace drapewright::desktop {

class CaseDocument;
class PhotoDesk;
class PhotoRow;
class PlanView;
class SectionPane;
class SectionTool;
class SectionView;
class StartPage;
class ToolRow;
class TracingDesk;

/// The drawing with its switches, or what to do first while there is nothing to draw.
class DrawingPane : public QWidget {
  Q_OBJECT

 public:
  explicit DrawingPane(CaseDocument& document, QWidget* parent = nullptr);

  void show_result(const PlanResult& result);
  /// The case has changed and its plan is late: what is drawn is out of date.
  void show_late(std::shared_ptr<const wound::Case> value);
  /// Another case: it is fitted to the window once its plan is there.
  void expect_other_case() { fit_next_ = true; }

  PlanView& view() { return *view_; }
  SectionView& section();
  const SectionTool& section_tool() const { return *section_tool_; }
  /// Shows or hides the section below the drawing, and its line on it.
  QAction& section_switch() { return *section_switch_; }
  StartPage& start_page() { return *start_; }
  TracingDesk& desk() { return *desk_; }
  PhotoDesk& photo() { return *photo_; }
  ToolRow& tools() { return *tools_; }
  /// Puts the desk's tools on the view. They come before those that are there by then: what is in
  /// hand is meant, whatever lies under it.
  void lay_out_tools();
  /// One switch for each layer.
  QMenu& layers() { return *layers_; }

 private:
  QWidget* drawing_part();
  void build_layers();
  void build_section();
  void show_line();
  void show_right_page();

  PlanView* view_;
  TracingDesk* desk_;
  ToolRow* tools_;
  PhotoDesk* photo_;
  SectionPane* section_;
  SectionTool* section_tool_ = nullptr;  ///< the view owns it
  QAction* section_switch_;
  StartPage* start_;
  QMenu* layers_;
  QStackedWidget* stack_;
  bool has_drawing_ = false;
  bool fit_next_ = true;
};

}  // namespace drapewright::desktop
