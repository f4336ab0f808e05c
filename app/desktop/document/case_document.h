#pragma once

#include <QObject>
#include <QUndoStack>
#include <utility>

#include "app/desktop/commands/replace_case.h"

namespace drapewright::desktop {

/// The open case: its value, where it is kept, and every step of undo. The only way to change the
/// value is `change` (or `edit`), which pushes one step.
class CaseDocument : public QObject {
  Q_OBJECT

 public:
  /// Starts with an empty case of `today` (YYYY-MM-DD).
  explicit CaseDocument(const QString& today, QObject* parent = nullptr);

  const wound::Case& value() const { return *value_; }
  CasePtr shared() const { return value_; }
  QUndoStack& undo_stack() { return undo_stack_; }
  /// Empty for a case that has no file yet.
  const QString& path() const { return path_; }
  bool is_modified() const { return !undo_stack_.isClean(); }
  /// Whether anything was drawn yet.
  bool has_wounds() const { return !value_->current().wounds.empty(); }

  /// One step of undo, unless nothing changes.
  /// @param text   what the Edit menu calls it: "border"
  /// @param field  steps of the same field merge until `end_stretch`; empty: never
  void change(const QString& text, wound::Case next, const QString& field = {});
  /// The same, by a function that alters a copy of the case.
  template <class Edit>
  void edit(const QString& text, const QString& field, Edit&& alter) {
    wound::Case next = value();
    std::forward<Edit>(alter)(next);
    change(text, std::move(next), field);
  }
  /// Typing in a field is over: what follows is a step of its own.
  void end_stretch() { ++stretch_; }

  void start_new(const QString& today);
  /// A case without a file of its own: a demo. Saving it asks for a place.
  void start_from(wound::Case value);
  /// The case that was read from that file.
  void open(wound::Case value, const QString& path);
  /// Checks the case, then writes it; the path becomes the document's.
  /// @throws InputError when the case could not be read back or the file not written; the old file
  ///         and this document stay as they were
  void save_as(const QString& path);

 signals:
  void case_changed();
  void path_changed();
  /// Another case than before: panels forget what they had selected.
  void case_replaced();

 private:
  void put(CasePtr value);
  void replace(wound::Case value, const QString& path);

  CasePtr value_;
  QUndoStack undo_stack_;
  QString path_;
  int stretch_ = 0;
};

/// A case with nothing in it yet but a date and a label to be changed.
wound::Case empty_case(const QString& today);

}  // namespace drapewright::desktop
