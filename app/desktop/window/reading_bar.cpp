#include "app/desktop/window/reading_bar.h"

#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>

#include "app/desktop/window/file_desk.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr int waiting_is_told_after_ms = 50;

}  // namespace

ReadingBar::ReadingBar(FileDesk& files, QWidget* parent)
    : QWidget(parent), name_(new QLabel(this)), progress_(new QProgressBar(this)) {
  auto* cancel = new QPushButton(spoken("Cancel"), this);
  cancel->setObjectName("cancel_reading");
  cancel->setAccessibleName(spoken("Cancel reading"));
  cancel->setToolTip(spoken("Give the file up. What is open stays open."));
  cancel->setMinimumHeight(24);
  progress_->setRange(0, 100);
  progress_->setMaximumWidth(160);
  progress_->setAccessibleName(spoken("Reading"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  for (QWidget* part : {static_cast<QWidget*>(name_), static_cast<QWidget*>(progress_),
                        static_cast<QWidget*>(cancel)}) {
    row->addWidget(part);
  }
  late_.setSingleShot(true);
  late_.setInterval(waiting_is_told_after_ms);
  connect(&late_, &QTimer::timeout, this, &QWidget::show);
  connect(cancel, &QPushButton::clicked, &files, &FileDesk::cancel_reading);
  connect(&files, &FileDesk::reading_started, this, &ReadingBar::start);
  connect(&files, &FileDesk::reading_ended, this, &ReadingBar::end);
  connect(&files, &FileDesk::reading_progressed, this,
          [this](double part) { progress_->setValue(static_cast<int>(100 * part)); });
  hide();
}

void ReadingBar::start(const QString& path) {
  name_->setText(spoken("Reading {1}", {QFileInfo(path).fileName()}));
  progress_->setValue(0);
  late_.start();
}

void ReadingBar::end() {
  late_.stop();
  hide();
}

}  // namespace drapewright::desktop
