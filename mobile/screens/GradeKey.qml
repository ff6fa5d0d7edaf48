// A grade to give: the cut end of a tube, number, word and test. Last time's is lightly marked, and stays so when another is given.
import QtQuick
import Kneerail.Ui

KeyFace {
    id: key

    property int grade: 1
    property string test
    property bool lastTime: false
    property bool now: false

    implicitWidth: Tokens.digitKeyWidth
    implicitHeight: Math.max(Tokens.touchTarget, words.implicitHeight + padding * 2)
    look: now ? KeyFace.Chosen : KeyFace.Plain
    Accessible.name: lastTime ? qsTr("Grade %1, %2, last time").arg(grade).arg(text) : qsTr("Grade %1, %2").arg(grade).arg(text)
    Accessible.description: test

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

    GradeKeyWords {
        id: words

        anchors.fill: parent
        anchors.margins: key.padding
        grade: key.grade
        word: key.text
        test: key.test
        mark: key.now && key.lastTime ? qsTr("now, as last time") : key.now ? qsTr("now") : key.lastTime ? qsTr("last time") : ""
    }
}
