// The note of a chosen part while its grade or its screws are entered: its name and its grade. What its screws were is said beside their keys.
import QtQuick
import Kneerail.Ui

Note {
    id: note

    required property WalkModel walk

    height: head.height + Tokens.inset * 2
    Accessible.name: walk.partTitle

    NoteHead {
        id: head

        width: note.width - Tokens.inset * 2
        title: note.walk.partTitle
        aside: !note.walk.partChosen ? "" : note.walk.gradeNow > 0 ? qsTr("grade %1 now").arg(note.walk.gradeNow) : note.walk.lastGrade > 0 ? qsTr("last visit grade %1").arg(note.walk.lastGrade) : qsTr("not graded before")
        onAsked: note.walk.askForecast()
    }
}
