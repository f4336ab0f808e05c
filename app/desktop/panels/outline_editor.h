#pragma once

#include <QWidget>

#include "app/desktop/document/outline_target.h"

class QComboBox;
class QLabel;

namespace drapewright::desktop {

class CaseDocument;
class PasteForm;
class PointsForm;
class SizeForm;

/// How the outline of the chosen shape is entered: by length x width, corner by corner, or pasted.
class OutlineEditor : public QWidget {
  Q_OBJECT

 public:
  enum class Way { ellipse, rectangle, points, pasted };
  explicit OutlineEditor(CaseDocument& document, QWidget* parent = nullptr);

  void set_target(const OutlineTarget& target);
  void set_way(Way way);
  /// Shows the fields for length and width, and puts the keyboard into the first.
  void type_size();

 signals:
  /// A new shape has become this one.
  void shape_added(const drapewright::desktop::ShapeRef& ref);

 private:
  void build_ways();
  void show_case();
  void put(const geometry::Ring& ring, const QString& what);

  CaseDocument& document_;
  OutlineTarget target_;
  QComboBox* ways_;
  QLabel* title_;
  SizeForm* size_;
  PointsForm* points_;
  PasteForm* paste_;
};

}  // namespace drapewright::desktop
