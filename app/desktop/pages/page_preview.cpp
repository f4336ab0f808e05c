#include "app/desktop/pages/page_preview.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QToolButton>
#include <QVBoxLayout>
#include <QWheelEvent>
#include <algorithm>

#include "app/printing/painter.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

/// The paper itself. Its keys and the wheel turn the pages.
class PagePreview::Sheet : public QWidget {
 public:
  explicit Sheet(PagePreview* preview) : QWidget(preview), preview_(preview) {
    setFocusPolicy(Qt::StrongFocus);
    setMinimumSize(320, 360);
    setAccessibleName(spoken("Preview of the pages"));
    setObjectName("page_sheet");
  }

  void show_page(const report::Drawing* page, const QString& words) {
    page_ = page;
    words_ = words;
    setAccessibleDescription(page == nullptr ? words : QString::fromStdString(page->description));
    update();
  }

 protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (page_ == nullptr) {
      painter.drawText(rect().adjusted(12, 12, -12, -12), Qt::AlignCenter | Qt::TextWordWrap,
                       words_);
    } else {
      paint_page(painter);
    }
    if (hasFocus()) {
      painter.setPen(QPen(palette().color(QPalette::Highlight), 2));
      painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
  }

  void keyPressEvent(QKeyEvent* event) override {
    switch (event->key()) {
      case Qt::Key_PageDown:
      case Qt::Key_Right:
        return preview_->turn_to(preview_->page() + 1);
      case Qt::Key_PageUp:
      case Qt::Key_Left:
        return preview_->turn_to(preview_->page() - 1);
      default:
        QWidget::keyPressEvent(event);
    }
  }

  void wheelEvent(QWheelEvent* event) override {
    const int down = event->angleDelta().y();
    if (down != 0) preview_->turn_to(preview_->page() + (down < 0 ? 1 : -1));
  }

 private:
  void paint_page(QPainter& painter) {
    constexpr double around = 8;
    const double scale = std::min((width() - 2 * around) / page_->width_mm,
                                  (height() - 2 * around) / page_->height_mm);
    painter.translate(0.5 * (width() - scale * page_->width_mm),
                      0.5 * (height() - scale * page_->height_mm));
    painter.scale(scale, scale);
    const QRectF paper(0, 0, page_->width_mm, page_->height_mm);
    painter.fillRect(paper, Qt::white);
    printing::paint_on_paper(painter, *page_);
    painter.setPen(QPen(palette().color(QPalette::Mid), 0));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(paper);
    painter.resetTransform();
  }

  PagePreview* preview_;
  const report::Drawing* page_ = nullptr;
  QString words_;
};

PagePreview::PagePreview(QWidget* parent)
    : QWidget(parent),
      sheet_(new Sheet(this)),
      place_(new QLabel(this)),
      back_(new QToolButton(this)),
      on_(new QToolButton(this)) {
  const auto button = [this](QToolButton* of, Qt::ArrowType arrow, const QString& name, int step) {
    of->setArrowType(arrow);
    of->setToolTip(name);
    of->setAccessibleName(name);
    of->setMinimumSize(28, 28);
    connect(of, &QToolButton::clicked, this, [this, step] { turn_to(page_ + step); });
  };
  button(back_, Qt::LeftArrow, spoken("Page before"), -1);
  button(on_, Qt::RightArrow, spoken("Next page"), 1);
  back_->setObjectName("page_before");
  on_->setObjectName("page_next");
  place_->setObjectName("page_place");
  auto* row = new QHBoxLayout;
  row->addStretch(1);
  for (QWidget* part :
       {static_cast<QWidget*>(back_), static_cast<QWidget*>(place_), static_cast<QWidget*>(on_)}) {
    row->addWidget(part);
  }
  row->addStretch(1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(sheet_, 1);
  column->addLayout(row);
  show_words({});
}

void PagePreview::show_document(const report::Document& document) {
  document_ = document;
  turn_to(page_);
}

void PagePreview::show_words(const QString& words) {
  document_ = {};
  sheet_->show_page(nullptr, words);
  show_place();
}

void PagePreview::turn_to(int page) {
  if (document_.pages.empty()) return;
  page_ = std::clamp(page, 0, static_cast<int>(document_.pages.size()) - 1);
  sheet_->show_page(&document_.pages[static_cast<std::size_t>(page_)], {});
  show_place();
}

void PagePreview::show_place() {
  const auto pages = static_cast<int>(document_.pages.size());
  place_->setText(pages == 0 ? QString() : spoken("Page {1} of {2}", {page_ + 1, pages}));
  back_->setEnabled(pages > 0 && page_ > 0);
  on_->setEnabled(page_ + 1 < pages);
}

}  // namespace drapewright::desktop
