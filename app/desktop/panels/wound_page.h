#pragma once

#include "app/desktop/panels/page.h"

namespace drapewright::desktop {

class CaseDocument;

/// What was seen: the case, its outlines, their depth.
class WoundPage : public Page {
  Q_OBJECT

 public:
  explicit WoundPage(CaseDocument& document, QWidget* parent = nullptr);
};

}  // namespace drapewright::desktop
