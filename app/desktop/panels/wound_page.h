#pragma once

#include "app/desktop/document/outline_target.h"
#include "app/desktop/panels/page.h"

namespace drapewright::desktop {

class CaseDocument;
class OutlineEditor;
class ShapeList;

/// What was seen: the case, its outlines, their depth.
class WoundPage : public Page {
  Q_OBJECT

 public:
  explicit WoundPage(CaseDocument& document, QWidget* parent = nullptr);

  const OutlineTarget& target() const;
  void choose(const ShapeRef& ref);
  void choose_target(const OutlineTarget& target);
  /// Goes to where length and width are typed.
  void type_size();

 signals:
  void target_changed(const drapewright::desktop::OutlineTarget& target);
  /// An undermined range or a tunnel of the wound was chosen; -1: none.
  void range_chosen(std::size_t wound, int row);
  void tunnel_chosen(std::size_t wound, int row);

 private:
  ShapeList* list_;
  OutlineEditor* outline_;
};

}  // namespace drapewright::desktop
