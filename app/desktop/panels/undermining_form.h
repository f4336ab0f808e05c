#pragma once

#include <QWidget>
#include <optional>

#include "app/desktop/panels/number_rows.h"

namespace drapewright::wound {
struct Wound;
}

namespace drapewright::desktop {

class CaseDocument;
class RowsForm;

/// What leads away under the skin of one wound: its undermined ranges and its tunnels, each list a
/// table. Every change is one step of undo.
class UnderminingForm : public QWidget {
  Q_OBJECT

 public:
  explicit UnderminingForm(CaseDocument& document, QWidget* parent = nullptr);

  /// @param wound  its number in the current assessment; nothing: none is shown
  void set_wound(std::optional<std::size_t> wound);

 signals:
  /// The user chose this range or tunnel of the wound; -1: none.
  void range_chosen(std::size_t wound, int row);
  void tunnel_chosen(std::size_t wound, int row);

 private:
  void build_ranges();
  void build_tunnels();
  /// The wound that is shown in the case that is open; nullptr when there is none.
  const wound::Wound* shown() const;
  template <class Alter>
  void edit(const QString& text, Alter&& alter);
  void show_case();

  CaseDocument& document_;
  std::optional<std::size_t> wound_;
  RowsForm* ranges_;
  RowsForm* tunnels_;
};

}  // namespace drapewright::desktop
