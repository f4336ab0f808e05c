#pragma once

#include <QWidget>

#include "core/report/paper.h"

class QLabel;
class QToolButton;

namespace drapewright::desktop {

/// One page of a document at a time, as large as the room allows, with what leads to the others.
class PagePreview : public QWidget {
  Q_OBJECT

 public:
  explicit PagePreview(QWidget* parent = nullptr);

  /// Stays on the page that is looked at where there still is one.
  void show_document(const report::Document& document);
  /// Instead of pages: why there are none.
  void show_words(const QString& words);
  int page() const { return page_; }
  void turn_to(int page);

 private:
  class Sheet;
  void show_place();

  report::Document document_;
  int page_ = 0;
  Sheet* sheet_;
  QLabel* place_;
  QToolButton* back_;
  QToolButton* on_;
};

}  // namespace drapewright::desktop
