#include "app/desktop/pages/page_desk.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QVBoxLayout>
#include <utility>

#include "app/desktop/fields/limited_field.h"
#include "app/desktop/pages/page_preview.h"
#include "app/desktop/pages/page_settings.h"
#include "app/desktop/window/file_desk.h"
#include "app/printing/on_printer.h"
#include "app/printing/pdf.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr int waiting_is_told_after_ms = 50;
constexpr int dots_per_inch = 600;

}  // namespace

PageDesk::PageDesk(PlanResult result, std::string today, FileDesk& files, QWidget* parent)
    : QDialog(parent),
      result_(std::move(result)),
      today_(std::move(today)),
      files_(files),
      settings_(new PageSettings(this)),
      preview_(new PagePreview(this)) {
  setWindowTitle(spoken("Pages and printing"));
  setObjectName("page_desk");
  settings_->offer_plan(result_.plan != nullptr);
  settings_->setMaximumWidth(44 * fontMetrics().averageCharWidth());
  auto* left = new QVBoxLayout;
  left->addWidget(settings_, 1);
  left->addWidget(quiet_text(
      spoken("Print at 100 %, never fitted to the page. PDF files ask for that by themselves."),
      this));
  left->addWidget(buttons());
  auto* row = new QHBoxLayout(this);
  row->addLayout(left);
  row->addWidget(preview_, 1);
  resize(900, 660);
  late_.setSingleShot(true);
  late_.setInterval(waiting_is_told_after_ms);
  connect(&late_, &QTimer::timeout, this, [this] {
    if (is_busy()) preview_->show_words(spoken("The pages are being laid out…"));
  });
  connect(settings_, &PageSettings::changed, this, &PageDesk::lay_out);
  lay_out();
}

QWidget* PageDesk::buttons() {
  auto* row = new QWidget(this);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(0, 0, 0, 0);
  print_ = new QPushButton(spoken("&Print…"), row);
  print_->setObjectName("print_pages");
  save_ = new QPushButton(spoken("&Save as PDF…"), row);
  save_->setObjectName("save_pages");
  auto* close = new QPushButton(spoken("&Close"), row);
  connect(print_, &QPushButton::clicked, this, &PageDesk::ask_printer);
  connect(save_, &QPushButton::clicked, this,
          [this] { files_.save_pdf(printing::to_pdf(document_)); });
  connect(close, &QPushButton::clicked, this, &QDialog::accept);
  for (QPushButton* button : {print_, save_, close}) line->addWidget(button);
  print_->setDefault(true);
  return row;
}

void PageDesk::lay_out() {
  const PageWishes wishes = settings_->wishes();
  offer(false);
  if (wishes.are_none()) {
    worker_.cancel();
    document_ = {};
    preview_->show_words(spoken("Tick what is to be printed."));
    return;
  }
  late_.start();
  worker_.request([this, wishes, result = result_, today = today_](const Progress&) {
    report::Document document;
    QString fault;
    try {
      static const wound::Case nothing;
      const wound::Case& value = result.planned ? *result.planned : nothing;
      document = pages_for(wishes, value, result.plan.get(), today);
    } catch (const std::exception& error) {
      fault = spoken("These pages cannot be laid out: {1}", {error.what()});
    }
    return Worker::Delivery([this, document = std::move(document), fault]() mutable {
      take(std::move(document), fault);
    });
  });
}

void PageDesk::take(report::Document document, const QString& fault) {
  late_.stop();
  document_ = std::move(document);
  if (document_.pages.empty()) {
    preview_->show_words(fault);
  } else {
    preview_->show_document(document_);
  }
  offer(!document_.pages.empty());
  emit laid_out();
}

void PageDesk::offer(bool pages) {
  print_->setEnabled(pages);
  save_->setEnabled(pages);
}

bool PageDesk::print_on(QPrinter& printer) { return printing::print(document_, printer); }

void PageDesk::ask_printer() {
  QPrinter printer(QPrinter::HighResolution);
  printer.setResolution(dots_per_inch);
  QPrintDialog dialog(&printer, this);
  dialog.setObjectName("printer_choice");
  if (dialog.exec() != QDialog::Accepted || print_on(printer)) return;
  QMessageBox::warning(this, windowTitle(),
                       spoken("The printer took nothing. Is it switched on and has it paper? The "
                              "pages can also be saved as PDF and printed from there."));
}

}  // namespace drapewright::desktop
