#include "app/desktop/window/main_window.h"

#include <QAction>
#include <QClipboard>
#include <QCloseEvent>
#include <QDate>
#include <QFileInfo>
#include <QGuiApplication>
#include <QImage>
#include <QLabel>
#include <QMimeData>
#include <QProgressBar>
#include <QScreen>
#include <QSettings>
#include <QSplitter>
#include <QStatusBar>
#include <QTabWidget>
#include <algorithm>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/pages/page_desk.h"
#include "app/desktop/panels/cautions_page.h"
#include "app/desktop/panels/findings_panel.h"
#include "app/desktop/panels/materials_panel.h"
#include "app/desktop/panels/page.h"
#include "app/desktop/panels/record_page.h"
#include "app/desktop/panels/settings_page.h"
#include "app/desktop/panels/wound_page.h"
#include "app/desktop/photo/photo_desk.h"
#include "app/desktop/sheets/sheets_page.h"
#include "app/desktop/stores/stores_window.h"
#include "app/desktop/theme/marks.h"
#include "app/desktop/tools/pocket_mark.h"
#include "app/desktop/tools/port_tool.h"
#include "app/desktop/tools/tool_row.h"
#include "app/desktop/tools/tracing_desk.h"
#include "app/desktop/window/appearance.h"
#include "app/desktop/window/drawing_pane.h"
#include "app/desktop/window/export_desk.h"
#include "app/desktop/window/fault_box.h"
#include "app/desktop/window/file_desk.h"
#include "app/desktop/window/help.h"
#include "app/desktop/window/outline_desk.h"
#include "app/desktop/window/reading_bar.h"
#include "app/desktop/window/result_pane.h"
#include "app/desktop/window/start_page.h"
#include "app/wording/spoken.h"
#include "core/base/calendar.h"
#include "core/base/numbers.h"
#include "core/practice/cautions.h"

namespace drapewright::desktop {
namespace {

constexpr int waiting_is_told_after_ms = 50;
constexpr int cautions_tab = 1;
constexpr int frame_px = 4;           ///< what a pane of tabs adds to its page
constexpr double usual_text_px = 16;  ///< a line of text at 100 %

bool any_contraindication(const wound::Case& value) {
  return std::ranges::any_of(value.cautions.present, [](const std::string& id) {
    const auto* caution = practice::find_caution(id);
    return caution != nullptr && caution->kind == practice::CautionKind::contraindication;
  });
}

bool tell_the_same(const dressing::Plan& a, const dressing::Plan& b) {
  const auto line = [](const dressing::Consumable& of) { return of.item + of.basis; };
  return a.fill.piece_count == b.fill.piece_count &&
         std::ranges::equal(a.findings, b.findings, {}, &dressing::Finding::text,
                            &dressing::Finding::text) &&
         std::ranges::equal(a.consumables, b.consumables, {}, line, line);
}

/// Plans of one case differ in what is drawn by where pieces are cut apart alone.
bool draw_the_same(const dressing::Plan& a, const dressing::Plan& b) {
  const auto start = [](const dressing::Seam& seam) { return seam.line.from; };
  return std::ranges::equal(a.fill.seams, b.fill.seams, {}, start, start);
}

std::string day_by_the_clock() { return QDate::currentDate().toString(Qt::ISODate).toStdString(); }

QString dropped_file(const QMimeData& data) {
  return data.urls().size() == 1 ? data.urls().front().toLocalFile() : QString();
}

}  // namespace

MainWindow::MainWindow(const QString& today, QWidget* parent)
    : QMainWindow(parent),
      document_(today),
      files_(new FileDesk(document_, today, *this)),
      outlines_(new OutlineDesk(document_, *files_, *this)),
      exports_(new ExportDesk(
          *files_, [this] { return result_; }, *this)),
      appearance_(new Appearance(this)) {
  setAcceptDrops(true);
  late_.setSingleShot(true);
  late_.setInterval(waiting_is_told_after_ms);
  build_panes(today);
  build_tools();
  build_status_bar();
  build_file_menu();
  build_edit_menu();
  build_draw_menu();
  build_view_menu();
  build_help_menu();
  connect_parts();
  show_title();
  mark_cautions();
  resize(1366, 720);
}

MainWindow::~MainWindow() {
  // A field that loses the focus tells the document so: let it happen while there is one.
  hide();
}

PlanView& MainWindow::plan_view() { return drawing_->view(); }

bool MainWindow::is_up_to_date() const {
  return document_.has_wounds() ? result_.planned == document_.shared() : !result_.planned;
}

void MainWindow::build_panes(const QString& today) {
  seen_ = new QTabWidget(this);
  seen_->setDocumentMode(true);
  seen_->setAccessibleName(spoken("What was seen, and how to dress it"));
  wound_page_ = new WoundPage(document_, this);
  seen_->addTab(wound_page_, spoken("Wound"));
  seen_->addTab(new CautionsPage(document_, this), spoken("Cautions"));
  seen_->addTab(new SettingsPage(document_, this), spoken("Dressing"));
  seen_->addTab(record_ = new RecordPage(document_, today.toStdString(), this), spoken("Record"));
  shown_ = new QTabWidget(this);
  shown_->setDocumentMode(true);
  shown_->setAccessibleName(spoken("The plan, drawn"));
  drawing_ = new DrawingPane(document_, this);
  sheets_ = new SheetsPage(document_, this);
  shown_->addTab(drawing_, spoken("Drawing"));
  shown_->addTab(sheets_, spoken("Sheets"));
  results_ = new ResultPane(this);
  auto* split = panes_ = new QSplitter(this);
  split->addWidget(seen_);
  split->addWidget(shown_);
  split->addWidget(results_);
  split->setStretchFactor(1, 1);
  split->setChildrenCollapsible(false);
  split->setHandleWidth(6);
  const int seen = seen_->minimumSizeHint().width();
  const int results = results_->sizeHint().width();
  split->setSizes({seen, std::max(1366 - seen - results, 400), results});
  setCentralWidget(split);
}

void MainWindow::build_tools() {
  auto mark = std::make_unique<PocketMark>(plan_view());
  connect(wound_page_, &WoundPage::range_chosen, &plan_view(),
          [mark = mark.get()](std::size_t wound, int row) { mark->mark_range(wound, row); });
  connect(wound_page_, &WoundPage::tunnel_chosen, &plan_view(),
          [mark = mark.get()](std::size_t wound, int row) { mark->mark_tunnel(wound, row); });
  plan_view().add_tool(std::move(mark));
  auto port = std::make_unique<PortTool>(plan_view(), document_);
  port_tool_ = port.get();
  plan_view().add_tool(std::move(port));
  drawing_->lay_out_tools();
}

void MainWindow::build_status_bar() {
  progress_ = new QProgressBar(this);
  progress_->setRange(0, 100);
  progress_->setMaximumWidth(160);
  progress_->setFormat(spoken("Planning"));
  progress_->setAccessibleName(spoken("Planning"));
  progress_->hide();
  cursor_ = new QLabel(this);
  statusBar()->addWidget(new QLabel(standing_sentence(), this), 1);
  statusBar()->addPermanentWidget(new ReadingBar(*files_, this));
  statusBar()->addPermanentWidget(progress_);
  statusBar()->addPermanentWidget(cursor_);
}

void MainWindow::connect_parts() {
  connect(&document_, &CaseDocument::case_changed, this, &MainWindow::replan);
  connect(&document_, &CaseDocument::case_changed, this, &MainWindow::show_title);
  connect(&document_, &CaseDocument::case_changed, this, &MainWindow::mark_cautions);
  connect(&document_, &CaseDocument::case_replaced, this, &MainWindow::forget);
  connect(&document_, &CaseDocument::path_changed, this, &MainWindow::show_title);
  connect(&document_.undo_stack(), &QUndoStack::cleanChanged, this, &MainWindow::show_title);
  connect(&job_, &PlanJob::finished, this, &MainWindow::take);
  connect(&job_, &PlanJob::progressed, this,
          [this](double part) { progress_->setValue(static_cast<int>(100 * part)); });
  connect(sheets_, &SheetsPage::improved, this, &MainWindow::take_better_cut);
  connect(&late_, &QTimer::timeout, this, &MainWindow::show_late);
  connect(&drawing_->start_page(), &StartPage::tool_wanted, &drawing_->desk(),
          &TracingDesk::take_up);
  PhotoDesk& photo = drawing_->photo();
  connect(&photo, &PhotoDesk::failed, this, [this](const QString& what, const InputError& error) {
    show_fault(this, what, error, spoken("The case is as it was."));
  });
  files_->set_companion([&photo](const QString& path) { photo.keep_beside(path); });
  connect(&drawing_->start_page(), &StartPage::photo_wanted, this, &MainWindow::open_photo);
  connect(&drawing_->start_page(), &StartPage::size_wanted, wound_page_, &WoundPage::type_size);
  connect(&drawing_->start_page(), &StartPage::open_wanted, files_, &FileDesk::open);
  connect(&drawing_->start_page(), &StartPage::demo_wanted, files_, &FileDesk::open_demo);
  connect(&results_->findings(), &FindingsPanel::place_chosen, &plan_view(), &PlanView::point_out);
  connect(&results_->findings(), &FindingsPanel::no_place_chosen, &plan_view(),
          &PlanView::clear_mark);
  connect(&results_->materials(), &MaterialsPanel::save_wanted, this,
          [this] { files_->save_list(as_csv(results_->materials().rows())); });
  ToolRow& tools = drawing_->tools();
  TracingDesk& desk = drawing_->desk();
  connect(wound_page_, &WoundPage::target_changed, &desk, &TracingDesk::set_target);
  connect(&desk, &TracingDesk::shape_wanted, wound_page_, &WoundPage::choose);
  connect(&tools, &ToolRow::target_wanted, wound_page_, &WoundPage::choose_target);
  desk.set_target(wound_page_->target());
  connect(appearance_, &Appearance::touch_sizes_changed, &tools, &ToolRow::set_touch_sizes);
  tools.set_touch_sizes(Appearance::touch_sizes());
  connect(appearance_, &Appearance::language_chosen, this, [this] {
    // Whoever chooses a language may not read the one that is spoken now.
    statusBar()->showMessage("From the next start on. / Ab dem nächsten Start.", 10000);
  });
  connect(&plan_view(), &PlanView::cursor_moved, this, &MainWindow::show_cursor);
  connect(&plan_view(), &PlanView::cursor_left, cursor_, &QLabel::clear);
}

void MainWindow::replan() {
  if (!document_.has_wounds()) {
    job_.cancel();
    take({});
    return;
  }
  if (!late_.isActive()) late_.start();
  sheets_->forget();
  job_.request(document_.shared(), day_by_the_clock());
}

StoresWindow& MainWindow::open_stores() {
  const auto today = day_number(day_by_the_clock()).value();
  if (stores_ == nullptr) stores_ = new StoresWindow(today, this);
  stores_->set_today(today);
  stores_->show();
  stores_->raise();
  stores_->activateWindow();
  return *stores_;
}

PageDesk& MainWindow::open_pages() {
  auto* desk =
      new PageDesk(is_up_to_date() ? result_ : PlanResult{}, day_by_the_clock(), *files_, this);
  desk->setAttribute(Qt::WA_DeleteOnClose);
  desk->open();
  return *desk;
}

void MainWindow::forget() {
  drawing_->expect_other_case();
  take({});
}

void MainWindow::take(const PlanResult& result) {
  late_.stop();
  progress_->hide();
  results_->setEnabled(true);
  result_ = result;
  results_->show_result(result);
  drawing_->show_result(result);
  sheets_->show_result(result);
  record_->show_result(result);
  emit planned();
}

/// What is drawn and told stays where it is unless it has changed: mostly only the sheets have.
void MainWindow::take_better_cut(const PlanResult& result) {
  if (result.planned != document_.shared() || !result.plan || !result_.plan) return;
  const bool told = tell_the_same(*result.plan, *result_.plan);
  const bool drawn = draw_the_same(*result.plan, *result_.plan);
  result_ = result;
  if (!told) results_->show_result(result);
  if (!drawn) drawing_->show_result(result);
}

void MainWindow::show_late() {
  if (!job_.is_busy()) return;
  progress_->setValue(0);
  progress_->show();
  results_->setEnabled(false);  // greyed: its figures are those of the case before
  drawing_->show_late(document_.shared());
}

void MainWindow::show_title() {
  QString title = QString::fromStdString(document_.value().label);
  if (!document_.path().isEmpty()) title += " - " + QFileInfo(document_.path()).fileName();
  setWindowTitle(title + "[*] - Drapewright");
  setWindowModified(document_.is_modified());
}

void MainWindow::mark_cautions() {
  const auto& value = document_.value();
  using dressing::Severity;
  const int size = fontMetrics().height();
  QIcon mark;
  QString tip = spoken("The cautions were gone through.");
  if (any_contraindication(value)) {
    mark = severity_mark(Severity::stop, palette(), size);
    tip = spoken("A contraindication is present: stop.");
  } else if (!value.cautions.reviewed) {
    mark = severity_mark(Severity::warning, palette(), size);
    tip = spoken("The cautions have not been gone through yet.");
  }
  seen_->setTabIcon(cautions_tab, mark);
  seen_->setTabToolTip(cautions_tab, tip);
}

void MainWindow::show_cursor(QPointF cm, double hour) {
  const auto number = [](double value) { return QString::fromStdString(format_number(value, 1)); };
  const QString text = hour > 0 ? spoken("x {1}, y {2} cm, {3} o'clock",
                                         {number(cm.x()), number(cm.y()), number(hour)})
                                : spoken("x {1}, y {2} cm", {number(cm.x()), number(cm.y())});
  cursor_->setText(text);
}

void MainWindow::keep_layout() {
  keeps_layout_ = true;
  const QSettings kept;
  if (!restoreGeometry(kept.value("window").toByteArray())) {
    const QSize room = screen()->availableSize();
    const double larger = std::max(1.0, fontMetrics().height() / usual_text_px);
    resize(QSize(static_cast<int>(1366 * larger), static_cast<int>(720 * larger)).boundedTo(room));
  }
  panes_->restoreState(kept.value("panes").toByteArray());
  drawing_->section_switch().setChecked(kept.value("section", true).toBool());
  fit_to_screen();
}

/// With large text the panes beside the drawing would push each other off the screen: then they
/// share what the drawing leaves, and scroll.
void MainWindow::fit_to_screen() {
  const auto limit = [this](int px) {
    for (Page* page : findChildren<Page*>()) page->set_most_width(px);
    results_->set_most_width(px);
  };
  limit(QWIDGETSIZE_MAX);
  const int room = screen()->availableSize().width();
  if (minimumSizeHint().width() <= room) return;
  const int drawing = shown_->minimumSizeHint().width();
  const int beside =
      std::max((room - drawing - 2 * panes_->handleWidth()) / 2 - frame_px, room / 5);
  limit(beside);
  // Not before the layouts have heard of it.
  QTimer::singleShot(0, this, [this, room, beside, drawing] {
    if (width() > room) resize(room, height());
    panes_->setSizes({beside, drawing, beside});
  });
}

void MainWindow::changeEvent(QEvent* event) {
  QMainWindow::changeEvent(event);
  if (event->type() == QEvent::ActivationChange && isActiveWindow()) {
    record_->set_today(day_by_the_clock());
  }
  // After the panes had the news themselves.
  if (keeps_layout_ && event->type() == QEvent::FontChange) {
    QTimer::singleShot(0, this, &MainWindow::fit_to_screen);
  }
}

void MainWindow::closeEvent(QCloseEvent* event) {
  event->setAccepted(files_->may_leave());
  if (!event->isAccepted() || !keeps_layout_) return;
  QSettings kept;
  kept.setValue("window", saveGeometry());
  kept.setValue("panes", panes_->saveState());
  kept.setValue("section", drawing_->section_switch().isChecked());
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (!dropped_file(*event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void MainWindow::open_photo() {
  const QString path = files_->ask_photo();
  if (!path.isEmpty()) drawing_->photo().open(path);
}

void MainWindow::paste_photo() {
  const QImage image = QGuiApplication::clipboard()->image();
  drawing_->photo().paste(image);
}

void MainWindow::dropEvent(QDropEvent* event) {
  const QString path = dropped_file(*event->mimeData());
  static const QStringList pictures{"png", "jpg", "jpeg"};
  if (pictures.contains(QFileInfo(path).suffix().toLower())) {
    drawing_->photo().open(path);
    return;
  }
  if (!path.isEmpty() && files_->may_leave()) files_->open_path(path);
}

}  // namespace drapewright::desktop
