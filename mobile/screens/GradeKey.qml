// A grade to give: the cut end of a tube, number, word and test. Last time's is lightly marked, and stays so when another is given.
import QtQuick
import Kneerail.Ui

OctagonKey {
    id: key

    property int grade: 1
    property string test
    property bool lastTime: false
    property bool now: false

    look: now ? OctagonKey.Chosen : OctagonKey.Plain
    spoken: lastTime ? qsTr("Grade %1, %2, last time").arg(grade).arg(text) : qsTr("Grade %1, %2").arg(grade).arg(text)
    Accessible.description: test

    contentItem: GradeKeyWords {
        grade: key.grade
        word: key.text
        test: key.test
        mark: key.now && key.lastTime ? qsTr("now, as last time") : key.now ? qsTr("now") : key.lastTime ? qsTr("last time") : ""
    }

    Octagon {
        anchors.fill: parent
        anchors.margins: Tokens.smallGap * 1.5
        visible: key.lastTime
        fill: "transparent"
        edge: Tokens.ghost
        edgeWidth: Tokens.ruleStroke
        dashed: true
        cut: Tokens.slotCut
    }
}
