#pragma once

#include <QUndoCommand>
#include <functional>
#include <memory>

#include "core/wound/case.h"

namespace drapewright::desktop {

using CasePtr = std::shared_ptr<const wound::Case>;

/// One step of undo: the case before and after. Cases are values and small beside what they save
/// in thought, so one command serves every change.
class ReplaceCase : public QUndoCommand {
 public:
  /// What makes two steps one: the same `field` in the same `stretch` of editing. An empty field
  /// never merges.
  struct MergeKey {
    QString field;
    int stretch = 0;
    friend bool operator==(const MergeKey&, const MergeKey&) = default;
  };

  ReplaceCase(const QString& text, CasePtr before, CasePtr after, MergeKey key,
              std::function<void(CasePtr)> put);

  void undo() override { put_(before_); }
  void redo() override { put_(after_); }
  int id() const override { return key_.field.isEmpty() ? -1 : 1; }
  bool mergeWith(const QUndoCommand* next) override;

 private:
  CasePtr before_;
  CasePtr after_;
  MergeKey key_;
  std::function<void(CasePtr)> put_;
};

}  // namespace drapewright::desktop
