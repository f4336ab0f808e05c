#include "app/desktop/window/drawing_pane.h"

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QSplitter>
#include <QStackedWidget>
#include <QToolButton>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/photo/edge_tool.h"
#include "app/desktop/photo/mark_tools.h"
#include "app/desktop/photo/photo_desk.h"
#include "app/desktop/photo/photo_layer.h"
#include "app/desktop/photo/photo_row.h"
#include "app/desktop/section/section_pane.h"
#include "app/desktop/section/section_view.h"
#include "app/desktop/tools/add_tool.h"
#include "app/desktop/tools/corners_tool.h"
#include "app/desktop/tools/ellipse_tool.h"
#include "app/desktop/tools/held_mark.h"
#include "app/desktop/tools/measure_tool.h"
#include "app/desktop/tools/points_tool.h"
#include "app/desktop/tools/rectangle_tool.h"
#include "app/desktop/tools/retrace_tool.h"
#include "app/desktop/tools/section_tool.h"
#include "app/desktop/tools/smooth_tool.h"
#include "app/desktop/tools/split_tool.h"
#include "app/desktop/tools/take_away_tool.h"
#include "app/desktop/tools/tool_row.h"
#include "app/desktop/tools/trace_tool.h"
#include "app/desktop/tools/tracing_desk.h"
#include "app/desktop/tools/tunnel_tool.h"
#include "app/desktop/tools/undermining_tool.h"
#include "app/desktop/tools/whole_tool.h"
#include "app/desktop/window/start_page.h"
#include "app/wording/spoken.h"
#include "core/geometry/measures.h"
#include "core/report/layer_style.h"

namespace drapewright::desktop {
namespace {

QToolButton* tool(const QString& text, const QString& tip, QWidget* parent) {
  auto* button = new QToolButton(parent);
  button->setText(text);
  button->setToolTip(tip);
  button->setAccessibleName(tip);
  button->setFocusPolicy(Qt::StrongFocus);
  button->setMinimumSize(28, 26);
  return button;
}

template <class... Tools>
void add_tools(PlanView& view, TracingDesk& desk) {
  (view.add_tool(std::make_unique<Tools>(desk)), ...);
}

template <class... Tools>
void add_photo_tools(PlanView& view, TracingDesk& desk, PhotoDesk& photo) {
  (view.add_tool(std::make_unique<Tools>(desk, photo)), ...);
}

}  // namespace

DrawingPane::DrawingPane(CaseDocument& document, QWidget* parent)
    : QWidget(parent),
      view_(new PlanView(this)),
      desk_(new TracingDesk(document, *view_, this)),
      tools_(new ToolRow(*desk_, this)),
      photo_(new PhotoDesk(document, *desk_, this)),
      section_(new SectionPane(this)),
      section_switch_(new QAction(spoken("&Section"), this)),
      start_(new StartPage(this)),
      layers_(new QMenu(spoken("&Layers"), this)),
      stack_(new QStackedWidget(this)) {
  build_layers();
  build_section();
  stack_->addWidget(start_);
  stack_->addWidget(drawing_part());
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 6, 0, 0);
  column->addWidget(stack_);
}

QWidget* DrawingPane::drawing_part() {
  auto* part = new QWidget(this);
  QToolButton* fit = tool(spoken("Fit"), spoken("Fit the drawing to the window"), part);
  QToolButton* closer = tool("+", spoken("Zoom in"), part);
  QToolButton* farther = tool("\u2212", spoken("Zoom out"), part);
  QToolButton* layers = tool(spoken("Layers"), spoken("Choose the layers that are drawn"), part);
  layers->setMenu(layers_);
  layers->setPopupMode(QToolButton::InstantPopup);
  connect(fit, &QToolButton::clicked, view_, &PlanView::fit);
  connect(closer, &QToolButton::clicked, view_, &PlanView::zoom_in);
  connect(farther, &QToolButton::clicked, view_, &PlanView::zoom_out);
  auto* row = new QHBoxLayout;
  row->setContentsMargins(6, 0, 6, 0);
  QToolButton* section = tool(spoken("Section"), section_switch_->toolTip(), part);
  section->setDefaultAction(section_switch_);
  for (QToolButton* button : {fit, closer, farther, layers, section}) row->addWidget(button);
  row->addSpacing(8);
  row->addWidget(&tools_->words(), 1);
  auto* column = new QVBoxLayout(part);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addLayout(row);
  column->addWidget(tools_);
  column->addWidget(new PhotoRow(*photo_, part));
  auto* split = new QSplitter(Qt::Vertical, part);
  split->addWidget(view_);
  split->addWidget(section_);
  split->setStretchFactor(0, 1);
  split->setCollapsible(0, false);
  split->setHandleWidth(6);
  split->setSizes({380, 220});
  column->addWidget(split, 1);
  return part;
}

void DrawingPane::build_section() {
  section_switch_->setCheckable(true);
  section_switch_->setChecked(true);
  section_switch_->setToolTip(spoken(
      "Show a cut through wound and dressing below the drawing, along the line from A to B"));
  auto tool = std::make_unique<SectionTool>(
      *view_, [this](const geometry::Segment& line) { section().set_line(line); },
      [this] { section().lay_usual_line(); });
  section_tool_ = tool.get();
  view_->add_tool(std::move(tool));
  connect(&section(), &SectionView::line_laid, this, &DrawingPane::show_line);
  connect(section_switch_, &QAction::toggled, this, [this](bool on) {
    section_->setVisible(has_drawing_ && on);
    show_line();
  });
}

void DrawingPane::show_line() {
  section_tool_->set_line(section_switch_->isChecked() ? section().line() : std::nullopt);
}

void DrawingPane::lay_out_tools() {
  view_->add_tool(std::make_unique<PhotoLayer>(*view_, *photo_));
  add_photo_tools<LengthMarkTool, SquareMarkTool, AxisMarkTool, EdgeTool>(*view_, *desk_, *photo_);
  add_tools<MeasureTool, WholeTool, PointsTool, TraceTool, CornersTool, EllipseTool, RectangleTool,
            AddTool, TakeAwayTool, SplitTool, RetraceTool, SmoothTool, UnderminingTool, TunnelTool,
            HeldMark>(*view_, *desk_);
  connect(photo_, &PhotoDesk::changed, this, [this] {
    tools_->show_photo_tools(photo_->has_photo());
    const PhotoPlace* place = photo_->place();
    view_->set_sheet(place ? std::optional(geometry::Box{place->low(), place->high()})
                           : std::nullopt);
    show_right_page();
  });
  connect(desk_, &TracingDesk::tool_changed, this, [this] {
    show_right_page();
    view_->take_up_stop();
  });
}

/// What to do first, unless there is a drawing or somebody began one.
void DrawingPane::show_right_page() {
  const bool drawing =
      has_drawing_ || photo_->has_photo() || draws_outlines(desk_->tool()) || desk_->has_draft();
  view_->set_blank_sheet(drawing);
  stack_->setCurrentIndex(drawing ? 1 : 0);
  section_->setVisible(has_drawing_ && section_switch_->isChecked());
}

SectionView& DrawingPane::section() { return section_->view(); }

void DrawingPane::build_layers() {
  for (const auto& style : report::layer_styles()) {
    if (style.kind == report::LayerKind::skin) continue;  // of sections
    QAction* action = layers_->addAction(spoken(style.title));
    action->setCheckable(true);
    action->setChecked(view_->layer_visible(style.kind));
    connect(action, &QAction::toggled, this,
            [this, kind = style.kind](bool on) { view_->set_layer_visible(kind, on); });
  }
}

void DrawingPane::show_result(const PlanResult& result) {
  has_drawing_ = result.planned != nullptr;
  show_right_page();
  // A case that cannot be planned keeps no earlier plan on the screen.
  if (!result.plan) view_->show_plan(nullptr, nullptr);
  view_->clear_mark();
  view_->show_plan(result.planned, result.plan);
  section().show_plan(result.plan ? result.planned : nullptr, result.plan, fit_next_);
  if (result.planned && fit_next_) {
    fit_next_ = false;
    view_->fit();
  }
}

void DrawingPane::show_late(std::shared_ptr<const wound::Case> value) {
  has_drawing_ = true;
  show_right_page();
  view_->show_plan(std::move(value), nullptr);
}

}  // namespace drapewright::desktop
