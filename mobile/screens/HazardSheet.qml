// The people to tell of what cannot wait, over whatever room is open.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: over

    required property HazardLine line
    required property WalkModel walk

    signal findingWanted

    anchors.fill: parent

    MadeOnce {
        shown: over.line.opened

        TellSheet {
            objectName: "tellSheet"
            anchors.fill: over
            line: over.line
            undoes: over.walk.undoWords
            portrait: over.height > over.width
            onUndo: over.walk.undo()
            onFindingWanted: {
                over.line.openFinding();
                over.findingWanted();
            }
        }
    }
}
