#pragma once

#include "app/desktop/panels/page.h"

namespace drapewright::desktop {

class CaseDocument;

/// What was seen: the case, its outlines, their depth.
class WoundPage : public Page {
  Q_OBJECT

 public:
  explicit WoundPage(CaseDocument& document, QWidget* parent = nullptr);

 signals:
  /// An undermined range or a tunnel of the wound was chosen; -1: none.
  void range_chosen(std::size_t wound, int row);
  void tunnel_chosen(std::size_t wound, int row);
};

}  // namespace drapewright::desktop
