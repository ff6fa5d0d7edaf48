<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="fr" sourcelanguage="en">
<context>
    <name>ActKeys</name>
    <message>
        <source>Undo</source>
        <translation>Annuler</translation>
    </message>
    <message>
        <source>on, leave open</source>
        <translation>suite, laisser ouvert</translation>
    </message>
</context>
<context>
    <name>AlterRun</name>
    <message>
        <source>Change %1</source>
        <translation>Modifier %1</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Retour</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Annuler</translation>
    </message>
    <message>
        <source>Keep the change</source>
        <translation>Enregistrer</translation>
    </message>
</context>
<context>
    <name>AskedKeys</name>
    <message>
        <source>Done</source>
        <translation>Fait</translation>
    </message>
    <message>
        <source>No words</source>
        <translation>Sans texte</translation>
    </message>
    <message>
        <source>So it is called</source>
        <translation>C&apos;est son nom</translation>
    </message>
</context>
<context>
    <name>BayCheck</name>
    <message>
        <source>Bay %1 to %2</source>
        <translation>Travée %1 à %2</translation>
    </message>
    <message>
        <source>Gives under a hard push</source>
        <translation>Cède sous forte poussée</translation>
    </message>
    <message>
        <source>F-%1</source>
        <translation>F-%1</translation>
    </message>
    <message>
        <source>F-%1: the bay gives: loose, grade 4.</source>
        <translation>F-%1 : la travée cède : desserré, note 4.</translation>
    </message>
    <message>
        <source>%1 mm</source>
        <translation>%1 mm</translation>
    </message>
    <message>
        <source>F-%1: %2</source>
        <translation>F-%1 : %2</translation>
    </message>
    <message>
        <source>the gate</source>
        <translation>le portillon</translation>
    </message>
    <message>
        <source>rails</source>
        <translation>lisses</translation>
    </message>
    <message>
        <source>mesh infill</source>
        <translation>grillage</translation>
    </message>
    <message>
        <source>gate</source>
        <translation>portillon</translation>
    </message>
    <message>
        <source>open gap</source>
        <translation>ouverture libre</translation>
    </message>
    <message>
        <source>ground</source>
        <translation>sol</translation>
    </message>
    <message>
        <source>water</source>
        <translation>eau</translation>
    </message>
    <message>
        <source>a road</source>
        <translation>une route</translation>
    </message>
    <message>
        <source>machinery</source>
        <translation>machines</translation>
    </message>
    <message>
        <source>firm</source>
        <translation>ferme</translation>
    </message>
    <message>
        <source>gives</source>
        <translation>cède</translation>
    </message>
    <message>
        <source>moves</source>
        <translation>bouge</translation>
    </message>
    <message>
        <source>not pushed</source>
        <translation>non poussée</translation>
    </message>
    <message>
        <source>height</source>
        <translation>hauteur</translation>
    </message>
    <message>
        <source>gap</source>
        <translation>vide</translation>
    </message>
    <message>
        <source>gap below</source>
        <translation>vide en bas</translation>
    </message>
    <message>
        <source>%1, %2, %3</source>
        <translation>%1, %2, %3</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>vide</translation>
    </message>
    <message>
        <source>drop %1 m</source>
        <translation>chute %1 m</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 à %2</translation>
    </message>
    <message>
        <source>no rule is chosen</source>
        <translation>aucune règle choisie</translation>
    </message>
    <message>
        <source>rule: %1</source>
        <translation>règle : %1</translation>
    </message>
    <message>
        <source>no limit set</source>
        <translation>sans limite</translation>
    </message>
    <message>
        <source>at least %1</source>
        <translation>au moins %1</translation>
    </message>
    <message>
        <source>at most %1</source>
        <translation>au plus %1</translation>
    </message>
    <message>
        <source>%1 %2. The chosen rule says %3</source>
        <translation>%1 %2. La règle choisie dit %3</translation>
    </message>
    <message>
        <source>Gives: loose, grade 4, once you go on</source>
        <translation>Cède : desserré, note 4, si l&apos;on continue</translation>
    </message>
    <message>
        <source>Gives: tighten its screws, push again</source>
        <translation>Cède : serrer ses vis, pousser encore</translation>
    </message>
    <message>
        <source>Unlikely for a rail. Once more?</source>
        <translation>Peu probable pour un garde-corps. Remesurer ?</translation>
    </message>
</context>
<context>
    <name>BayKeys</name>
    <message>
        <source>Push the rail, as a person leaning would</source>
        <translation>Pousser la main courante, comme en s&apos;appuyant</translation>
    </message>
    <message>
        <source>Firm</source>
        <translation>Ferme</translation>
    </message>
    <message>
        <source>Gives</source>
        <translation>Cède</translation>
    </message>
    <message>
        <source>Moves</source>
        <translation>Bouge</translation>
    </message>
    <message>
        <source>no play, no noise, under a hard push</source>
        <translation>ni jeu ni bruit, sous forte poussée</translation>
    </message>
    <message>
        <source>springs back, or rattles</source>
        <translation>revient, ou cliquette</translation>
    </message>
    <message>
        <source>grade 5: cannot wait</source>
        <translation>note 5 : ne peut attendre</translation>
    </message>
    <message>
        <source>Measure where it looks worst</source>
        <translation>Mesurer au pire endroit</translation>
    </message>
    <message>
        <source>Push</source>
        <translation>Pousser</translation>
    </message>
    <message>
        <source>Height</source>
        <translation>Hauteur</translation>
    </message>
    <message>
        <source>Gap</source>
        <translation>Vide</translation>
    </message>
    <message>
        <source>Gap below</source>
        <translation>Vide en bas</translation>
    </message>
    <message>
        <source>look again</source>
        <translation>regarder encore</translation>
    </message>
    <message>
        <source>Tighten</source>
        <translation>Serrer</translation>
    </message>
    <message>
        <source>its screws</source>
        <translation>ses vis</translation>
    </message>
    <message>
        <source>Finding</source>
        <translation>Constat</translation>
    </message>
    <message>
        <source>on this bay</source>
        <translation>sur cette travée</translation>
    </message>
    <message>
        <source>The last post</source>
        <translation>Le dernier poteau</translation>
    </message>
    <message>
        <source>Next bay</source>
        <translation>Travée suivante</translation>
    </message>
    <message>
        <source>Post %1</source>
        <translation>Poteau %1</translation>
    </message>
</context>
<context>
    <name>BayNote</name>
    <message>
        <source>hand load</source>
        <translation>poussée</translation>
    </message>
    <message>
        <source>hand load, %1</source>
        <translation>poussée, %1</translation>
    </message>
    <message>
        <source>not pushed yet</source>
        <translation>pas encore poussée</translation>
    </message>
</context>
<context>
    <name>BaySlot</name>
    <message>
        <source>not kept</source>
        <translation>non enregistré</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>last %1</source>
        <translation>avant : %1</translation>
    </message>
</context>
<context>
    <name>CardOnGlass</name>
    <message>
        <source>Lay a bank card on the outline. Make it wider or narrower until they are one; then drawings are to scale on this glass.</source>
        <translation>Poser une carte bancaire sur le contour. L&apos;élargir ou le rétrécir jusqu&apos;à ce qu&apos;ils coïncident ; les dessins sont alors à l&apos;échelle sur cet écran.</translation>
    </message>
    <message>
        <source>85.6 mm</source>
        <translation>85,6 mm</translation>
    </message>
    <message>
        <source>Narrower</source>
        <translation>Rétrécir</translation>
    </message>
    <message>
        <source>Wider</source>
        <translation>Élargir</translation>
    </message>
    <message>
        <source>As large</source>
        <translation>Même taille</translation>
    </message>
</context>
<context>
    <name>ChangedRun</name>
    <message>
        <source>Post %1</source>
        <translation>Poteau %1</translation>
    </message>
    <message>
        <source>Between %1 and %2</source>
        <translation>Entre %1 et %2</translation>
    </message>
    <message>
        <source>How many centimetres from the beginning?</source>
        <translation>À combien de centimètres du début ?</translation>
    </message>
    <message>
        <source>How many centimetres after %1?</source>
        <translation>À combien de centimètres après %1 ?</translation>
    </message>
    <message>
        <source>Touch a bay or a post and say what becomes of it.</source>
        <translation>Toucher une travée ou un poteau et dire ce qu&apos;il devient.</translation>
    </message>
    <message>
        <source>Post %1 comes in, %2 after %3.</source>
        <translation>Le poteau %1 s&apos;ajoute, %2 après %3.</translation>
    </message>
    <message>
        <source>Post %1 moves to %2 along the run.</source>
        <translation>Le poteau %1 passe à l&apos;abscisse %2.</translation>
    </message>
    <message>
        <source>Post %1 is taken out.</source>
        <translation>Le poteau %1 est retiré.</translation>
    </message>
    <message>
        <source>Between %1 and %2 comes: %3.</source>
        <translation>Entre %1 et %2 vient : %3.</translation>
    </message>
    <message>
        <source>Nothing is changed until you keep it.</source>
        <translation>Rien ne change avant d&apos;enregistrer.</translation>
    </message>
    <message>
        <source>Nothing is taken out.</source>
        <translation>Rien n&apos;est retiré.</translation>
    </message>
    <message numerus="yes">
        <source>%n thing(s) taken out: what was read on them stays in the register.</source>
        <translation>
            <numerusform>%n élément retiré : ce qui y a été lu reste au registre.</numerusform>
            <numerusform>%n éléments retirés : ce qui y a été lu reste au registre.</numerusform>
        </translation>
    </message>
    <message>
        <source>What comes here?</source>
        <translation>Que mettre ici ?</translation>
    </message>
    <message>
        <source>a post</source>
        <translation>un poteau</translation>
    </message>
    <message>
        <source>What becomes of it?</source>
        <translation>Que devient-il ?</translation>
    </message>
    <message>
        <source>it moves</source>
        <translation>il se déplace</translation>
    </message>
    <message>
        <source>it is taken out</source>
        <translation>il est retiré</translation>
    </message>
    <message>
        <source>Not kept: %1 What was said stays here.</source>
        <translation>Non enregistré : %1 Ce qui a été dit reste ici.</translation>
    </message>
</context>
<context>
    <name>CheckNote</name>
    <message>
        <source>not kept</source>
        <translation>non enregistré</translation>
    </message>
</context>
<context>
    <name>Choice</name>
    <message>
        <source>In which zone of the site?</source>
        <translation>Dans quelle zone du site ?</translation>
    </message>
    <message>
        <source>This site has no zone yet: its sheet registers one.</source>
        <translation>Ce site n&apos;a pas encore de zone : sa fiche en inscrit une.</translation>
    </message>
    <message>
        <source>Which tube?</source>
        <translation>Quel tube ?</translation>
    </message>
    <message>
        <source>How is it built?</source>
        <translation>Comment est-il construit ?</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>What fills the bays?</source>
        <translation>Quel remplissage des travées ?</translation>
    </message>
    <message>
        <source>rails only</source>
        <translation>lisses seules</translation>
    </message>
    <message>
        <source>A toe board?</source>
        <translation>Une plinthe ?</translation>
    </message>
    <message>
        <source>with a toe board</source>
        <translation>avec plinthe</translation>
    </message>
    <message>
        <source>no toe board</source>
        <translation>sans plinthe</translation>
    </message>
    <message>
        <source>Where are the rails joined by sleeve couplings?</source>
        <translation>Où les lisses sont-elles jointes par manchons ?</translation>
    </message>
    <message>
        <source>nowhere</source>
        <translation>nulle part</translation>
    </message>
    <message numerus="yes">
        <source>every %n bay(s)</source>
        <translation>
            <numerusform>une fois par %n travée</numerusform>
            <numerusform>toutes les %n travées</numerusform>
        </translation>
    </message>
    <message>
        <source>Since which day? 3 April 2018: 03042018</source>
        <translation>Depuis quel jour ? 3 avril 2018 : 03042018</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>non connu</translation>
    </message>
    <message>
        <source>today</source>
        <translation>aujourd&apos;hui</translation>
    </message>
    <message>
        <source>What does a post stand on?</source>
        <translation>Sur quoi repose un poteau ?</translation>
    </message>
    <message>
        <source>What holds the rails at a post?</source>
        <translation>Qu&apos;est-ce qui tient les lisses à un poteau ?</translation>
    </message>
    <message>
        <source>three-way tee and cross</source>
        <translation>té à trois voies et croix</translation>
    </message>
    <message>
        <source>adjustable swivels</source>
        <translation>articulations réglables</translation>
    </message>
    <message>
        <source>How does the top rail end?</source>
        <translation>Comment finit la main courante ?</translation>
    </message>
    <message>
        <source>elbow</source>
        <translation>coude</translation>
    </message>
    <message>
        <source>three-way tee and end cap</source>
        <translation>té à trois voies et bouchon</translation>
    </message>
    <message>
        <source>The drop in centimetres</source>
        <translation>Hauteur de chute en centimètres</translation>
    </message>
    <message>
        <source>Who is behind it?</source>
        <translation>Qui est derrière ?</translation>
    </message>
    <message>
        <source>What is below?</source>
        <translation>Qu&apos;y a-t-il dessous ?</translation>
    </message>
    <message>
        <source>What is it here?</source>
        <translation>Qu&apos;est-ce ici ?</translation>
    </message>
    <message>
        <source>as the rule</source>
        <translation>selon la règle</translation>
    </message>
    <message>
        <source>It stands on</source>
        <translation>Il repose sur</translation>
    </message>
    <message>
        <source>Here the run goes</source>
        <translation>Ici le tronçon va</translation>
    </message>
    <message>
        <source>%1° left</source>
        <translation>%1° à gauche</translation>
    </message>
    <message>
        <source>%1° right</source>
        <translation>%1° à droite</translation>
    </message>
    <message>
        <source>straight on</source>
        <translation>tout droit</translation>
    </message>
    <message>
        <source>what stands here</source>
        <translation>ce qui est ici</translation>
    </message>
    <message>
        <source>This bay has</source>
        <translation>Cette travée a</translation>
    </message>
    <message>
        <source>and it is</source>
        <translation>et elle est</translation>
    </message>
    <message>
        <source>%1 long</source>
        <translation>longue de %1</translation>
    </message>
    <message>
        <source>level</source>
        <translation>de niveau</translation>
    </message>
    <message>
        <source>rising %1</source>
        <translation>en montée de %1</translation>
    </message>
    <message>
        <source>falling %1</source>
        <translation>en descente de %1</translation>
    </message>
    <message>
        <source>How many posts?</source>
        <translation>Combien de poteaux ?</translation>
    </message>
    <message>
        <source>Which number has the first post?</source>
        <translation>Quel numéro a le premier poteau ?</translation>
    </message>
    <message>
        <source>How many rails?</source>
        <translation>Combien de lisses ?</translation>
    </message>
    <message>
        <source>How many centimetres from post to post?</source>
        <translation>Combien de centimètres d&apos;un poteau à l&apos;autre ?</translation>
    </message>
    <message>
        <source>How many centimetres high is the top rail?</source>
        <translation>À combien de centimètres de haut est la main courante ?</translation>
    </message>
    <message>
        <source>Bay %1 to %2</source>
        <translation>Travée %1 à %2</translation>
    </message>
    <message>
        <source>%1 · %2 long</source>
        <translation>%1 · %2 de long</translation>
    </message>
    <message>
        <source>%1 · falls %2</source>
        <translation>%1 · descend de %2</translation>
    </message>
    <message>
        <source>%1 · rises %2</source>
        <translation>%1 · monte de %2</translation>
    </message>
    <message>
        <source>How many centimetres is this bay long? The rule says %1</source>
        <translation>Combien de centimètres de long a cette travée ? La règle dit %1</translation>
    </message>
    <message>
        <source>How many centimetres does it rise to the next post? Under zero it falls</source>
        <translation>De combien de centimètres monte-t-elle au poteau suivant ? Sous zéro elle descend</translation>
    </message>
    <message>
        <source>%1 · top rail</source>
        <translation>%1 · main courante</translation>
    </message>
    <message>
        <source>%1 · mid-rail %2</source>
        <translation>%1 · sous-lisse %2</translation>
    </message>
    <message>
        <source>Post %1</source>
        <translation>Poteau %1</translation>
    </message>
    <message>
        <source>What stands at post %1?</source>
        <translation>Qu&apos;y a-t-il au poteau %1 ?</translation>
    </message>
    <message>
        <source>What is the run called?</source>
        <translation>Comment s&apos;appelle le tronçon ?</translation>
    </message>
    <message>
        <source>%1 · %2 · %3 · %4 m of rail</source>
        <translation>%1 · %2 · %3 · %4 m de lisse</translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s)</source>
        <translation>
            <numerusform>%Ln poteau</numerusform>
            <numerusform>%Ln poteaux</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln bay(s)</source>
        <translation>
            <numerusform>%Ln travée</numerusform>
            <numerusform>%Ln travées</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln fitting(s)</source>
        <translation>
            <numerusform>%Ln raccord</numerusform>
            <numerusform>%Ln raccords</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>CloseFigures</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>Grades</source>
        <translation>Notes</translation>
    </message>
    <message>
        <source>%1 at grade %2</source>
        <translation>%1 à la note %2</translation>
    </message>
    <message>
        <source>%L1</source>
        <translation>%L1</translation>
    </message>
</context>
<context>
    <name>CloseSigning</name>
    <message>
        <source>Signed and sealed</source>
        <translation>Signé et scellé</translation>
    </message>
    <message>
        <source>Sign here</source>
        <translation>Signer ici</translation>
    </message>
    <message>
        <source>Signature, written</source>
        <translation>Signature, écrite</translation>
    </message>
    <message>
        <source>Signature, empty</source>
        <translation>Signature, vide</translation>
    </message>
    <message>
        <source>Wipe</source>
        <translation>Effacer</translation>
    </message>
    <message>
        <source>What the seal does</source>
        <translation>Ce que fait le sceau</translation>
    </message>
    <message>
        <source>digest of what is here of this site</source>
        <translation>empreinte de ce qui est ici de ce site</translation>
    </message>
    <message>
        <source>What is entered from now on is of another visit.</source>
        <translation>Ce qui est saisi désormais relève d&apos;une autre visite.</translation>
    </message>
    <message>
        <source>Slide the sleeve over the joint to seal</source>
        <translation>Glisser le manchon sur le joint pour sceller</translation>
    </message>
    <message>
        <source>Slide the sleeve over the joint to seal without a signature</source>
        <translation>Glisser le manchon sur le joint pour sceller sans signature</translation>
    </message>
    <message>
        <source>Back to the walk</source>
        <translation>Retour à la tournée</translation>
    </message>
    <message>
        <source>Leave open and go on</source>
        <translation>Laisser ouvert et continuer</translation>
    </message>
</context>
<context>
    <name>CloseVisit</name>
    <message>
        <source>Asks before sealing</source>
        <translation>À voir avant de sceller</translation>
    </message>
</context>
<context>
    <name>CoatingKeys</name>
    <message>
        <source>Under zero, or over it</source>
        <translation>Sous zéro ou au-dessus</translation>
    </message>
    <message>
        <source>Next slot</source>
        <translation>Case suivante</translation>
    </message>
    <message>
        <source>Take the last digit back</source>
        <translation>Retirer le dernier chiffre</translation>
    </message>
</context>
<context>
    <name>CoatingNote</name>
    <message>
        <source>empty</source>
        <translation>vide</translation>
    </message>
    <message>
        <source>Coating reading %1 of 5, %2</source>
        <translation>Mesure de revêtement %1 sur 5, %2</translation>
    </message>
    <message>
        <source>%1, last visit %2</source>
        <translation>%1, dernière visite %2</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>not kept</source>
        <translation>non enregistré</translation>
    </message>
    <message>
        <source>under the probe</source>
        <translation>sous la sonde</translation>
    </message>
</context>
<context>
    <name>CoatingSet</name>
    <message numerus="yes">
        <source>%n reading(s)</source>
        <translation>
            <numerusform>%n mesure</numerusform>
            <numerusform>%n mesures</numerusform>
        </translation>
    </message>
    <message>
        <source>A gauge on rust reads rust: counted as at most this</source>
        <translation>Sur la rouille, la jauge lit la rouille : compté comme au plus cette valeur</translation>
    </message>
    <message>
        <source>seaward face</source>
        <translation>face côté mer</translation>
    </message>
    <message>
        <source>landward face</source>
        <translation>face côté terre</translation>
    </message>
    <message>
        <source>upper face</source>
        <translation>face supérieure</translation>
    </message>
    <message>
        <source>lower face</source>
        <translation>face inférieure</translation>
    </message>
    <message>
        <source>inside</source>
        <translation>intérieur</translation>
    </message>
    <message>
        <source>all round</source>
        <translation>tout autour</translation>
    </message>
    <message>
        <source>last visit %1 µm</source>
        <translation>dernière visite %1 µm</translation>
    </message>
    <message>
        <source>mean %1 µm · first reading here</source>
        <translation>moyenne %1 µm · première mesure ici</translation>
    </message>
    <message>
        <source>mean %1 µm · last visit %2 · %3</source>
        <translation>moyenne %1 µm · dernière visite %2 · %3</translation>
    </message>
    <message>
        <source>%1 less</source>
        <translation>%1 de moins</translation>
    </message>
    <message>
        <source>%1 more</source>
        <translation>%1 de plus</translation>
    </message>
    <message>
        <source>Far from last time. Read it once more?</source>
        <translation>Loin de la dernière fois. Mesurer encore ?</translation>
    </message>
    <message>
        <source>No reading yet</source>
        <translation>Pas encore de mesure</translation>
    </message>
    <message numerus="yes">
        <source>%n reading(s) today, %1</source>
        <translation>
            <numerusform>%n mesure ce jour, %1</numerusform>
            <numerusform>%n mesures ce jour, %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>DayWords</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>d MMM yyyy</source>
        <translation>d MMM yyyy</translation>
    </message>
    <message>
        <source>loose set screws</source>
        <translation>des vis de pression desserrées</translation>
    </message>
    <message>
        <source>a thin wall</source>
        <translation>une paroi mince</translation>
    </message>
    <message>
        <source>the grade to replace at</source>
        <translation>la note de remplacement</translation>
    </message>
    <message>
        <source>%1 from %2 to %3</source>
        <translation>%1 de %2 à %3</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>%1 min</source>
        <translation>%1 min</translation>
    </message>
    <message>
        <source>%1 h</source>
        <translation>%1 h</translation>
    </message>
    <message>
        <source>%1 h %2</source>
        <translation>%1 h %2</translation>
    </message>
    <message>
        <source>%L1 kB</source>
        <translation>%L1 kB</translation>
    </message>
    <message>
        <source>%L1 MB</source>
        <translation>%L1 MB</translation>
    </message>
    <message>
        <source>ddd d MMM yyyy</source>
        <translation>ddd d MMM yyyy</translation>
    </message>
    <message>
        <source>Told by the public</source>
        <translation>Signalé par le public</translation>
    </message>
    <message>
        <source>Told by staff</source>
        <translation>Signalé par le personnel</translation>
    </message>
    <message>
        <source>Told by a contractor</source>
        <translation>Signalé par une entreprise</translation>
    </message>
    <message>
        <source>Told by police or rescue</source>
        <translation>Signalé par police ou secours</translation>
    </message>
    <message>
        <source>Told by the maker</source>
        <translation>Signalé par le fabricant</translation>
    </message>
    <message>
        <source>Told by an engineer</source>
        <translation>Signalé par un ingénieur</translation>
    </message>
    <message>
        <source>Told by others</source>
        <translation>Signalé par d&apos;autres</translation>
    </message>
    <message>
        <source>%1: %2. Nobody has looked yet.</source>
        <translation>%1 : %2. Personne n&apos;a encore regardé.</translation>
    </message>
    <message>
        <source>Lies ahead, on %1: a look before it, each part by itself.</source>
        <translation>À venir, le %1 : un regard avant, chaque pièce à part.</translation>
    </message>
    <message>
        <source>Since %1 nobody has come: each part gets a look of its own.</source>
        <translation>Depuis le %1, personne n&apos;est venu : chaque pièce est regardée à part.</translation>
    </message>
    <message>
        <source>Closure</source>
        <translation>Barrage</translation>
    </message>
    <message>
        <source>Was to be looked at by %1: in place, put back, gone?</source>
        <translation>Était à regarder avant le %1 : en place, remis, disparu ?</translation>
    </message>
    <message>
        <source>Cannot wait, and is not made safe.</source>
        <translation>Ne peut attendre, et non mis en sécurité.</translation>
    </message>
    <message>
        <source>Made safe; was to be looked at by %1.</source>
        <translation>Mis en sécurité ; était à regarder avant le %1.</translation>
    </message>
    <message>
        <source>Made safe; to be mended by %1.</source>
        <translation>Mis en sécurité ; à réparer avant le %1.</translation>
    </message>
    <message>
        <source>To be mended by %1.</source>
        <translation>À réparer avant le %1.</translation>
    </message>
    <message>
        <source>Made safe; no day to mend it is set.</source>
        <translation>Mis en sécurité ; aucun jour de réparation fixé.</translation>
    </message>
    <message>
        <source>Next: %1.</source>
        <translation>Suite : %1.</translation>
    </message>
    <message>
        <source>Open, and nothing is said of what is next.</source>
        <translation>Ouvert, et rien n&apos;est dit de la suite.</translation>
    </message>
    <message>
        <source>Each post looked at and pushed; somebody was here last on %1.</source>
        <translation>Chaque poteau regardé et poussé ; dernier passage le %1.</translation>
    </message>
    <message>
        <source>Each post looked at and pushed; nobody has been here yet.</source>
        <translation>Chaque poteau regardé et poussé ; personne n&apos;est encore venu.</translation>
    </message>
    <message>
        <source>Past your chance of %1 for %2; the first of them with %3.</source>
        <translation>Au-delà de votre seuil de %1 pour %2 ; la première pièce à %3.</translation>
    </message>
    <message>
        <source>Nobody has measured a part of this run.</source>
        <translation>Personne n&apos;a mesuré de pièce de ce tronçon.</translation>
    </message>
    <message>
        <source>A gauge has measured it before: it ties that gauge&apos;s days together.</source>
        <translation>Un appareil l&apos;a déjà mesuré : cela relie entre eux les jours de cet appareil.</translation>
    </message>
    <message>
        <source>If there is time: the next by what a reading would tell.</source>
        <translation>S&apos;il reste du temps : la suivante selon ce qu&apos;une mesure apprendrait.</translation>
    </message>
    <message>
        <source>Never read, and a coating limit is near: chance %1 in two visits.</source>
        <translation>Jamais mesuré, et une limite de revêtement est proche : probabilité %1 d&apos;ici deux visites.</translation>
    </message>
    <message>
        <source>Read once only, so the rate is not known; chance %1 of a coating limit in two visits.</source>
        <translation>Mesuré une seule fois, vitesse donc inconnue ; probabilité %1 d&apos;une limite de revêtement d&apos;ici deux visites.</translation>
    </message>
    <message>
        <source>Coating limit near (chance %1 in two visits) and the rate still open.</source>
        <translation>Limite de revêtement proche (probabilité %1 d&apos;ici deux visites) et vitesse encore incertaine.</translation>
    </message>
    <message>
        <source>Down since %1</source>
        <translation>Démonté depuis le %1</translation>
    </message>
    <message>
        <source>%1; to be re-erected and signed by %2.</source>
        <translation>%1 ; à remonter et signer avant le %2.</translation>
    </message>
    <message>
        <source>%1; to be re-erected and signed.</source>
        <translation>%1 ; à remonter et signer.</translation>
    </message>
    <message>
        <source>What to measure is not reckoned yet; the rest of the day stands.</source>
        <translation>Ce qui est à mesurer n&apos;est pas encore calculé ; le reste de la journée tient.</translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) to look at</source>
        <translation>
            <numerusform>%Ln poteau à regarder</numerusform>
            <numerusform>%Ln poteaux à regarder</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln fitting(s) to torque</source>
        <translation>
            <numerusform>%Ln raccord à vérifier au couple</numerusform>
            <numerusform>%Ln raccords à vérifier au couple</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln wall(s) to read</source>
        <translation>
            <numerusform>%Ln paroi à mesurer</numerusform>
            <numerusform>%Ln parois à mesurer</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln part(s) to grade near</source>
        <translation>
            <numerusform>%Ln pièce à noter de près</numerusform>
            <numerusform>%Ln pièces à noter de près</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln part(s) to check</source>
        <translation>
            <numerusform>%Ln pièce à vérifier</numerusform>
            <numerusform>%Ln pièces à vérifier</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln screw(s) to sign</source>
        <translation>
            <numerusform>%Ln vis à signer</numerusform>
            <numerusform>%Ln vis à signer</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln coating(s) to read</source>
        <translation>
            <numerusform>%Ln revêtement à mesurer</numerusform>
            <numerusform>%Ln revêtements à mesurer</numerusform>
        </translation>
    </message>
    <message>
        <source>whole site</source>
        <translation>tout le site</translation>
    </message>
    <message>
        <source>post %1</source>
        <translation>poteau %1</translation>
    </message>
    <message>
        <source>posts %1 to %2</source>
        <translation>poteaux %1 à %2</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source> · %1 to %2</source>
        <translation> · %1 à %2</translation>
    </message>
    <message>
        <source>%1 not today</source>
        <translation>%1 pas aujourd&apos;hui</translation>
    </message>
    <message>
        <source>Hours of access: %1</source>
        <translation>Heures d&apos;accès : %1</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>Coating gauge %1</source>
        <translation>Jauge de revêtement %1</translation>
    </message>
    <message>
        <source>Torque wrench %1</source>
        <translation>Clé dynamométrique %1</translation>
    </message>
    <message>
        <source>Wall gauge %1</source>
        <translation>Jauge de paroi %1</translation>
    </message>
    <message>
        <source>Load gauge %1</source>
        <translation>Dynamomètre %1</translation>
    </message>
    <message>
        <source>Rule %1</source>
        <translation>Règle %1</translation>
    </message>
    <message>
        <source>away since %1</source>
        <translation>absent depuis le %1</translation>
    </message>
    <message>
        <source>out of date since %1</source>
        <translation>périmé depuis le %1</translation>
    </message>
    <message>
        <source>in doubt today</source>
        <translation>douteux ce jour</translation>
    </message>
    <message>
        <source>no certificate is written down</source>
        <translation>aucun certificat noté</translation>
    </message>
    <message>
        <source>in date to %1</source>
        <translation>valable jusqu&apos;au %1</translation>
    </message>
    <message>
        <source>%1 with one check foil</source>
        <translation>%1 avec une cale étalon</translation>
    </message>
    <message>
        <source>No instrument is in date.</source>
        <translation>Aucun instrument n&apos;est valable.</translation>
    </message>
    <message>
        <source>Take: %1.</source>
        <translation>Emporter : %1.</translation>
    </message>
</context>
<context>
    <name>DevicePictures</name>
    <message>
        <source>d MMM HH:mm</source>
        <translation>d MMM HH:mm</translation>
    </message>
</context>
<context>
    <name>DueTag</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
</context>
<context>
    <name>ElevationItem</name>
    <message>
        <source>1:%1</source>
        <translation>1:%1</translation>
    </message>
    <message>
        <source>about 1:%1</source>
        <translation>env. 1:%1</translation>
    </message>
    <message>
        <source>seen %1 · %2</source>
        <translation>vu %1 · %2</translation>
    </message>
</context>
<context>
    <name>ElevationView</name>
    <message>
        <source>drawing of the run, arrow keys go from part to part</source>
        <translation>dessin du tronçon, les flèches vont de pièce en pièce</translation>
    </message>
</context>
<context>
    <name>FeltKey</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>Fields</name>
    <message>
        <source>%1: %2</source>
        <translation>%1 : %2</translation>
    </message>
</context>
<context>
    <name>FindingActs</name>
    <message>
        <source>grade %1 · %2</source>
        <translation>note %1 · %2</translation>
    </message>
    <message>
        <source>grade %1 · %2 · %3</source>
        <translation>note %1 · %2 · %3</translation>
    </message>
    <message>
        <source>Does it still stand?</source>
        <translation>Tient-il encore ?</translation>
    </message>
    <message>
        <source>In place</source>
        <translation>En place</translation>
    </message>
    <message>
        <source>Put back</source>
        <translation>Remis</translation>
    </message>
    <message>
        <source>Gone</source>
        <translation>Disparu</translation>
    </message>
    <message>
        <source>What more was done? The last three are not safe by themselves.</source>
        <translation>Qu&apos;a-t-on fait de plus ? Les trois derniers ne suffisent pas à la sécurité.</translation>
    </message>
    <message>
        <source>Closed off</source>
        <translation>Barré</translation>
    </message>
    <message>
        <source>Propped</source>
        <translation>Étayé</translation>
    </message>
    <message>
        <source>Guarded</source>
        <translation>Gardé</translation>
    </message>
    <message>
        <source>Taped</source>
        <translation>Rubalise</translation>
    </message>
    <message>
        <source>Closed below</source>
        <translation>Barré dessous</translation>
    </message>
    <message>
        <source>Reported</source>
        <translation>Signalé</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Retour</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Annuler</translation>
    </message>
    <message>
        <source>Walk there</source>
        <translation>Y aller</translation>
    </message>
    <message>
        <source>I have read this</source>
        <translation>J&apos;ai lu ceci</translation>
    </message>
    <message>
        <source>Stands?</source>
        <translation>En place ?</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fait</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Suite</translation>
    </message>
    <message>
        <source>End it</source>
        <translation>Clore</translation>
    </message>
</context>
<context>
    <name>FindingEnd</name>
    <message>
        <source>Mended? That part&apos;s history starts again.</source>
        <translation>Réparé ? L&apos;historique de cette pièce recommence.</translation>
    </message>
    <message>
        <source>Re-torqued</source>
        <translation>Resserré</translation>
    </message>
    <message>
        <source>Touched up</source>
        <translation>Retouché</translation>
    </message>
    <message>
        <source>Replaced</source>
        <translation>Remplacé</translation>
    </message>
    <message>
        <source>Cut out, welded in</source>
        <translation>Coupé, ressoudé</translation>
    </message>
    <message>
        <source>Cleaned</source>
        <translation>Nettoyé</translation>
    </message>
    <message>
        <source>Base re-fixed</source>
        <translation>Ancrage refait</translation>
    </message>
    <message>
        <source>Or was it none?</source>
        <translation>Ou n&apos;était-ce rien ?</translation>
    </message>
    <message>
        <source>What ended it?</source>
        <translation>Clos par quoi ?</translation>
    </message>
    <message>
        <source>Looked again: nothing wrong</source>
        <translation>Regardé encore : rien d&apos;anormal</translation>
    </message>
    <message>
        <source>Raised by mistake</source>
        <translation>Ouvert par erreur</translation>
    </message>
    <message>
        <source>Mended</source>
        <translation>Réparé</translation>
    </message>
    <message>
        <source>By whom?</source>
        <translation>Par qui ?</translation>
    </message>
    <message>
        <source>It could not wait. On what is it ended?</source>
        <translation>Il ne pouvait attendre. Clos sur quelle base ?</translation>
    </message>
    <message>
        <source>Pushed and looked</source>
        <translation>Poussé et regardé</translation>
    </message>
    <message>
        <source>Looked</source>
        <translation>Regardé</translation>
    </message>
    <message>
        <source>Papers only</source>
        <translation>Papiers seulement</translation>
    </message>
</context>
<context>
    <name>FindingEnding</name>
    <message>
        <source>%1, on the spot</source>
        <translation>%1, sur place</translation>
    </message>
    <message>
        <source>own crew</source>
        <translation>notre équipe</translation>
    </message>
    <message>
        <source>contractor</source>
        <translation>une entreprise</translation>
    </message>
    <message>
        <source>Say what ended it.</source>
        <translation>Dire ce qui l&apos;a clos.</translation>
    </message>
    <message>
        <source>Say on what it is ended.</source>
        <translation>Dire sur quelle base il est clos.</translation>
    </message>
    <message>
        <source>%1 by %2</source>
        <translation>%1 par %2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1 ended</source>
        <translation>%1 clos</translation>
    </message>
</context>
<context>
    <name>FindingGrades</name>
    <message>
        <source>Grade %1</source>
        <translation>Note %1</translation>
    </message>
</context>
<context>
    <name>FindingKeys</name>
    <message>
        <source>Keep and walk on</source>
        <translation>Enregistrer, continuer</translation>
    </message>
    <message>
        <source>Back to the walk</source>
        <translation>Retour à la tournée</translation>
    </message>
    <message>
        <source>nothing is kept</source>
        <translation>rien n&apos;est enregistré</translation>
    </message>
</context>
<context>
    <name>FindingKinds</name>
    <message>
        <source>Other</source>
        <translation>Autre</translation>
    </message>
    <message>
        <source>Split</source>
        <translation>Fendu</translation>
    </message>
    <message>
        <source>Loose</source>
        <translation>Desserré</translation>
    </message>
    <message>
        <source>Missing</source>
        <translation>Manquant</translation>
    </message>
    <message>
        <source>Rust</source>
        <translation>Rouille</translation>
    </message>
    <message>
        <source>Rust weeping</source>
        <translation>Coulure de rouille</translation>
    </message>
    <message>
        <source>Bent</source>
        <translation>Tordu</translation>
    </message>
    <message>
        <source>Knocked</source>
        <translation>Heurté</translation>
    </message>
    <message>
        <source>Debris or scour</source>
        <translation>Débris, affouillement</translation>
    </message>
    <message>
        <source>Spread</source>
        <translation>Écarté</translation>
    </message>
    <message>
        <source>Outside the rule</source>
        <translation>Hors règle</translation>
    </message>
    <message>
        <source>Moves</source>
        <translation>Bouge</translation>
    </message>
    <message>
        <source>Paint flaking</source>
        <translation>Peinture écaillée</translation>
    </message>
    <message>
        <source>Something else</source>
        <translation>Autre chose</translation>
    </message>
    <message>
        <source>Will not close</source>
        <translation>Ne ferme pas</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Retour</translation>
    </message>
</context>
<context>
    <name>FindingNext</name>
    <message>
        <source>What is next?</source>
        <translation>Quelle suite ?</translation>
    </message>
    <message>
        <source>Watch</source>
        <translation>Surveiller</translation>
    </message>
    <message>
        <source>Measure next visit</source>
        <translation>Mesurer visite suivante</translation>
    </message>
    <message>
        <source>Mend in a week</source>
        <translation>Réparer sous 1 semaine</translation>
    </message>
    <message>
        <source>Mend in a month</source>
        <translation>Réparer sous 1 mois</translation>
    </message>
    <message>
        <source>Order</source>
        <translation>Commander</translation>
    </message>
    <message>
        <source>Ask an engineer</source>
        <translation>Voir un ingénieur</translation>
    </message>
    <message>
        <source>That is later than agreed. Why? Both days stay.</source>
        <translation>Plus tard que convenu. Pourquoi ? Les deux dates restent.</translation>
    </message>
    <message>
        <source>Money</source>
        <translation>Argent</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Pièce</translation>
    </message>
    <message>
        <source>Access</source>
        <translation>Accès</translation>
    </message>
    <message>
        <source>Weather</source>
        <translation>Météo</translation>
    </message>
    <message>
        <source>Engineer</source>
        <translation>Ingénieur</translation>
    </message>
    <message>
        <source>Other</source>
        <translation>Autre</translation>
    </message>
</context>
<context>
    <name>FindingPen</name>
    <message>
        <source>grade %1</source>
        <translation>note %1</translation>
    </message>
    <message>
        <source>it can wait</source>
        <translation>peut attendre</translation>
    </message>
    <message>
        <source>F-%1</source>
        <translation>F-%1</translation>
    </message>
    <message numerus="yes">
        <source>%n photograph(s)</source>
        <translation>
            <numerusform>%n photographie</numerusform>
            <numerusform>%n photographies</numerusform>
        </translation>
    </message>
    <message>
        <source>Photo %1 of %2</source>
        <translation>Photo %1 sur %2</translation>
    </message>
    <message>
        <source>whole, %1</source>
        <translation>entière, %1</translation>
    </message>
    <message>
        <source>Not kept: %1 The picture stays in its folder. Take it again.</source>
        <translation>Non enregistré : %1 L&apos;image reste dans son dossier. La reprendre.</translation>
    </message>
    <message>
        <source>Of %1 megapixels it was made smaller. The file stays as it is.</source>
        <translation>De %1 mégapixels, elle a été réduite. Le fichier reste tel quel.</translation>
    </message>
    <message>
        <source>photograph</source>
        <translation>photographie</translation>
    </message>
    <message>
        <source>arrow</source>
        <translation>flèche</translation>
    </message>
    <message>
        <source>ring</source>
        <translation>cercle</translation>
    </message>
    <message>
        <source>F-%1 · %2</source>
        <translation>F-%1 · %2</translation>
    </message>
    <message>
        <source>It can wait: %1</source>
        <translation>Peut attendre : %1</translation>
    </message>
    <message>
        <source>Not made safe</source>
        <translation>Non mis en sécurité</translation>
    </message>
    <message>
        <source>Not made safe: %1 %2</source>
        <translation>Non mis en sécurité : %1 %2</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>Made safe %1. The bay stays closed on every drawing</source>
        <translation>Mis en sécurité %1. La travée reste barrée sur chaque dessin</translation>
    </message>
    <message>
        <source>Made safe %1</source>
        <translation>Mis en sécurité %1</translation>
    </message>
    <message>
        <source>look again by %1 %2</source>
        <translation>regarder encore avant le %1 %2</translation>
    </message>
    <message>
        <source>d MMM</source>
        <translation>d MMM</translation>
    </message>
    <message>
        <source>Photograph of %1: %2</source>
        <translation>Photographie de %1 : %2</translation>
    </message>
</context>
<context>
    <name>FindingPicture</name>
    <message>
        <source>%1 of %2</source>
        <translation>%1 sur %2</translation>
    </message>
</context>
<context>
    <name>FindingSafe</name>
    <message>
        <source>This cannot wait. What did you do?</source>
        <translation>Ceci ne peut attendre. Qu&apos;a-t-on fait ?</translation>
    </message>
    <message>
        <source>It can wait</source>
        <translation>Peut attendre</translation>
    </message>
    <message>
        <source>%1 says why</source>
        <translation>%1 dit pourquoi</translation>
    </message>
    <message>
        <source>Closed off</source>
        <translation>Barré</translation>
    </message>
    <message>
        <source>Propped</source>
        <translation>Étayé</translation>
    </message>
    <message>
        <source>Guarded</source>
        <translation>Gardé</translation>
    </message>
    <message>
        <source>not safe by itself</source>
        <translation>ne suffit pas seul</translation>
    </message>
    <message>
        <source>Taped</source>
        <translation>Rubalise</translation>
    </message>
    <message>
        <source>Closed below</source>
        <translation>Barré dessous</translation>
    </message>
    <message>
        <source>Reported</source>
        <translation>Signalé</translation>
    </message>
    <message>
        <source>Why it can wait, in a sentence</source>
        <translation>Pourquoi cela peut attendre, en une phrase</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
</context>
<context>
    <name>FindingSheet</name>
    <message>
        <source>photograph of %1</source>
        <translation>photographie de %1</translation>
    </message>
    <message>
        <source>no photograph</source>
        <translation>pas de photographie</translation>
    </message>
</context>
<context>
    <name>FindingTag</name>
    <message>
        <source>no photograph</source>
        <translation>pas de photographie</translation>
    </message>
</context>
<context>
    <name>FindingWords</name>
    <message>
        <source>other</source>
        <translation>autre</translation>
    </message>
    <message>
        <source>closed off</source>
        <translation>barré</translation>
    </message>
    <message>
        <source>propped</source>
        <translation>étayé</translation>
    </message>
    <message>
        <source>taped</source>
        <translation>rubalise</translation>
    </message>
    <message>
        <source>struck</source>
        <translation>démonté</translation>
    </message>
    <message>
        <source>reported</source>
        <translation>signalé</translation>
    </message>
    <message>
        <source>guarded</source>
        <translation>gardé</translation>
    </message>
    <message>
        <source>closed below</source>
        <translation>barré dessous</translation>
    </message>
    <message>
        <source>watch</source>
        <translation>surveiller</translation>
    </message>
    <message>
        <source>measure next visit</source>
        <translation>mesurer visite suivante</translation>
    </message>
    <message>
        <source>mend</source>
        <translation>réparer</translation>
    </message>
    <message>
        <source>order</source>
        <translation>commander</translation>
    </message>
    <message>
        <source>ask an engineer</source>
        <translation>voir un ingénieur</translation>
    </message>
    <message>
        <source>repaired</source>
        <translation>réparé</translation>
    </message>
    <message>
        <source>replaced</source>
        <translation>remplacé</translation>
    </message>
    <message>
        <source>re-assessed</source>
        <translation>réévalué</translation>
    </message>
    <message>
        <source>raised by mistake</source>
        <translation>ouvert par erreur</translation>
    </message>
    <message>
        <source>in place</source>
        <translation>en place</translation>
    </message>
    <message>
        <source>put back</source>
        <translation>remis</translation>
    </message>
    <message>
        <source>gone</source>
        <translation>disparu</translation>
    </message>
    <message>
        <source>not seen</source>
        <translation>non vu</translation>
    </message>
    <message>
        <source>pushed and looked after the work</source>
        <translation>poussé et regardé après les travaux</translation>
    </message>
    <message>
        <source>looked</source>
        <translation>regardé</translation>
    </message>
    <message>
        <source>papers only</source>
        <translation>papiers seulement</translation>
    </message>
    <message>
        <source>re-torqued</source>
        <translation>resserré</translation>
    </message>
    <message>
        <source>touched up</source>
        <translation>retouché</translation>
    </message>
    <message>
        <source>cut out and welded in</source>
        <translation>coupé et ressoudé</translation>
    </message>
    <message>
        <source>re-galvanised</source>
        <translation>regalvanisé</translation>
    </message>
    <message>
        <source>repainted</source>
        <translation>repeint</translation>
    </message>
    <message>
        <source>cleaned</source>
        <translation>nettoyé</translation>
    </message>
    <message>
        <source>base re-fixed</source>
        <translation>ancrage refait</translation>
    </message>
    <message>
        <source>mended</source>
        <translation>réparé</translation>
    </message>
    <message>
        <source>money</source>
        <translation>argent</translation>
    </message>
    <message>
        <source>part</source>
        <translation>pièce</translation>
    </message>
    <message>
        <source>access</source>
        <translation>accès</translation>
    </message>
    <message>
        <source>weather</source>
        <translation>météo</translation>
    </message>
    <message>
        <source>engineer</source>
        <translation>ingénieur</translation>
    </message>
    <message>
        <source>%1: nobody told</source>
        <translation>%1 : signalé à personne</translation>
    </message>
    <message>
        <source>%1: nobody told, %2 min</source>
        <translation>%1 : signalé à personne, %2 min</translation>
    </message>
    <message>
        <source>%1: nobody told, %2 h %3 min</source>
        <translation>%1 : signalé à personne, %2 h %3 min</translation>
    </message>
    <message numerus="yes">
        <source>%1: nobody told, %n day(s)</source>
        <translation>
            <numerusform>%1 : signalé à personne, %n jour</numerusform>
            <numerusform>%1 : signalé à personne, %n jours</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>told %1</source>
        <translation>signalé : %1</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
</context>
<context>
    <name>Findings</name>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Constats</translation>
    </message>
</context>
<context>
    <name>FindingsFoot</name>
    <message>
        <source>Cannot wait hangs first, then by what comes due.</source>
        <translation>Ce qui ne peut attendre d&apos;abord, puis par échéance.</translation>
    </message>
    <message>
        <source>Push the rail left for the others. Touch a tag to open it.</source>
        <translation>Pousser la lisse à gauche pour les autres. Toucher une étiquette pour l&apos;ouvrir.</translation>
    </message>
    <message>
        <source>Touch a tag to open it.</source>
        <translation>Toucher une étiquette pour l&apos;ouvrir.</translation>
    </message>
    <message>
        <source>This run only</source>
        <translation>Ce tronçon seul</translation>
    </message>
    <message>
        <source>Mended too</source>
        <translation>Réparés aussi</translation>
    </message>
    <message>
        <source>New finding</source>
        <translation>Nouveau constat</translation>
    </message>
</context>
<context>
    <name>FindingsModel</name>
    <message>
        <source>Finding %1, %2, %3, grade %4, %5</source>
        <translation>Constat %1, %2, %3, note %4, %5</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>d MMM yyyy</source>
        <translation>d MMM yyyy</translation>
    </message>
    <message>
        <source>%1 open</source>
        <translation>ouverts : %1</translation>
    </message>
    <message>
        <source>%1 open, %2 cannot wait</source>
        <translation>ouverts : %1, ne peuvent attendre : %2</translation>
    </message>
    <message>
        <source>Nothing found on this run.</source>
        <translation>Aucun constat sur ce tronçon.</translation>
    </message>
    <message>
        <source>Nothing found at this site.</source>
        <translation>Aucun constat sur ce site.</translation>
    </message>
    <message>
        <source>Nobody has looked yet.</source>
        <translation>Personne n&apos;a encore regardé.</translation>
    </message>
    <message>
        <source>Last look %1</source>
        <translation>Dernier regard le %1</translation>
    </message>
    <message numerus="yes">
        <source>%n at this site</source>
        <translation>
            <numerusform>%n sur ce site</numerusform>
            <numerusform>%n sur ce site</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 cannot wait</source>
        <translation>%1 ne peut attendre</translation>
    </message>
    <message numerus="yes">
        <source>%n cannot wait</source>
        <translation>
            <numerusform>%n ne peut attendre</numerusform>
            <numerusform>%n ne peuvent attendre</numerusform>
        </translation>
    </message>
    <message>
        <source>Not made safe</source>
        <translation>Non mis en sécurité</translation>
    </message>
    <message>
        <source>no longer on the drawing</source>
        <translation>plus sur le dessin</translation>
    </message>
    <message>
        <source>not made safe</source>
        <translation>non mis en sécurité</translation>
    </message>
    <message>
        <source>not made safe: %1 %2</source>
        <translation>non mis en sécurité : %1 %2</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>can wait: %1</source>
        <translation>peut attendre : %1</translation>
    </message>
    <message>
        <source>what is next is not said</source>
        <translation>la suite n&apos;est pas dite</translation>
    </message>
    <message>
        <source>mend by %1</source>
        <translation>réparer avant le %1</translation>
    </message>
    <message>
        <source>closure not seen since %1</source>
        <translation>barrage non revu depuis le %1</translation>
    </message>
    <message>
        <source>look again by %1</source>
        <translation>regarder encore avant le %1</translation>
    </message>
    <message>
        <source>not mended</source>
        <translation>non réparé</translation>
    </message>
    <message>
        <source>found %1</source>
        <translation>trouvé le %1</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>put off</source>
        <translation>reporté</translation>
    </message>
    <message>
        <source>read</source>
        <translation>lu</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>not made safe: %1, gone %2</source>
        <translation>non mis en sécurité : %1, disparu %2</translation>
    </message>
    <message>
        <source>mend by %1, put off from %2: %3</source>
        <translation>réparer avant le %1, reporté du %2 : %3</translation>
    </message>
    <message>
        <source>read by %1</source>
        <translation>lu par %1</translation>
    </message>
</context>
<context>
    <name>FirstHand</name>
    <message>
        <source>Which hand will be on the keys?</source>
        <translation>Quelle main sera sur les touches ?</translation>
    </message>
    <message>
        <source>The keys of the walk come to the thumb that presses them. This is asked once, and can be changed here at any time.</source>
        <translation>Les touches de la tournée viennent au pouce qui les presse. La question n&apos;est posée qu&apos;une fois ; le choix peut être changé ici à tout moment.</translation>
    </message>
    <message>
        <source>The left hand</source>
        <translation>La main gauche</translation>
    </message>
    <message>
        <source>The right hand</source>
        <translation>La main droite</translation>
    </message>
</context>
<context>
    <name>ForecastCells</name>
    <message>
        <source>Post %1</source>
        <translation>Poteau %1</translation>
    </message>
    <message>
        <source>Reckoned before</source>
        <translation>Calculé avant</translation>
    </message>
    <message>
        <source>Reckoned</source>
        <translation>Calculé</translation>
    </message>
    <message>
        <source>just now</source>
        <translation>à l&apos;instant</translation>
    </message>
    <message>
        <source>not yet</source>
        <translation>pas encore</translation>
    </message>
</context>
<context>
    <name>ForecastKeys</name>
    <message>
        <source>Post before</source>
        <translation>Poteau précédent</translation>
    </message>
    <message>
        <source>Next post</source>
        <translation>Poteau suivant</translation>
    </message>
    <message>
        <source>Next worst</source>
        <translation>Pire suivant</translation>
    </message>
    <message>
        <source>Walk here</source>
        <translation>Tournée ici</translation>
    </message>
</context>
<context>
    <name>ForecastModel</name>
    <message>
        <source>%1 of %2</source>
        <translation>%1 sur %2</translation>
    </message>
    <message>
        <source>Reckoning the register.</source>
        <translation>Calcul du registre en cours.</translation>
    </message>
    <message>
        <source>Touch a part on the drawing.</source>
        <translation>Toucher une pièce sur le dessin.</translation>
    </message>
    <message>
        <source>Choose a part in Walk.</source>
        <translation>Choisir une pièce dans Tournée.</translation>
    </message>
    <message>
        <source>Choose a part in Walk, or begin with the worst.</source>
        <translation>Choisir une pièce dans Tournée, ou commencer par la pire.</translation>
    </message>
    <message>
        <source>Nothing is reckoned yet.</source>
        <translation>Rien n&apos;est encore calculé.</translation>
    </message>
    <message>
        <source>This part is newer than the reckoning.</source>
        <translation>Cette pièce est plus récente que le calcul.</translation>
    </message>
    <message>
        <source>Its coating is not reckoned.</source>
        <translation>Son revêtement n&apos;est pas calculé.</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>Structure, torque, grade</source>
        <translation>Structure, couple, note</translation>
    </message>
    <message>
        <source>Being reckoned.</source>
        <translation>Calcul en cours.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1 : %2</translation>
    </message>
</context>
<context>
    <name>ForecastPart</name>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Reckoned %1</source>
        <translation>Calculé le %1</translation>
    </message>
</context>
<context>
    <name>ForecastWords</name>
    <message>
        <source>class %1</source>
        <translation>la classe %1</translation>
    </message>
    <message>
        <source>what its zone is said to lose</source>
        <translation>ce que sa zone est censée perdre</translation>
    </message>
    <message>
        <source>about the pace of %1</source>
        <translation>à peu près au rythme de %1</translation>
    </message>
    <message>
        <source>over twice the pace of %1</source>
        <translation>plus de deux fois le rythme de %1</translation>
    </message>
    <message>
        <source>twice the pace of %1</source>
        <translation>deux fois le rythme de %1</translation>
    </message>
    <message>
        <source>faster than %1</source>
        <translation>plus vite que %1</translation>
    </message>
    <message>
        <source>slower than %1</source>
        <translation>moins vite que %1</translation>
    </message>
    <message>
        <source>well under the pace of %1</source>
        <translation>bien sous le rythme de %1</translation>
    </message>
    <message>
        <source>since it seems to have been replaced</source>
        <translation>depuis son remplacement apparent</translation>
    </message>
    <message>
        <source>since the touch-up in %1</source>
        <translation>depuis la retouche en %1</translation>
    </message>
    <message>
        <source>since it was re-galvanised in %1</source>
        <translation>depuis sa regalvanisation en %1</translation>
    </message>
    <message>
        <source>since it was replaced in %1</source>
        <translation>depuis son remplacement en %1</translation>
    </message>
    <message>
        <source>since it went into service in %1</source>
        <translation>depuis sa mise en service en %1</translation>
    </message>
    <message>
        <source>and nobody wrote down how old it is</source>
        <translation>et personne n&apos;a noté son âge</translation>
    </message>
    <message>
        <source>No reading %1.</source>
        <translation>Aucune mesure %1.</translation>
    </message>
    <message numerus="yes">
        <source>%n visit(s) %1</source>
        <translation>
            <numerusform>%n visite %1</numerusform>
            <numerusform>%n visites %1</numerusform>
        </translation>
    </message>
    <message>
        <source> and </source>
        <translation> et </translation>
    </message>
    <message>
        <source>%1, gauges %2.</source>
        <translation>%1, appareils %2.</translation>
    </message>
    <message>
        <source>%1, gauge %2.</source>
        <translation>%1, appareil %2.</translation>
    </message>
    <message>
        <source>The calibration of gauge %1 adds %2 µm to the readings of %3.</source>
        <translation>L&apos;étalonnage de l&apos;appareil %1 ajoute %2 µm aux mesures (%3).</translation>
    </message>
    <message>
        <source>Gauge %1 was off in %2: put right by %3 µm.</source>
        <translation>L&apos;appareil %1 était décalé en %2 : corrigé de %3 µm.</translation>
    </message>
    <message>
        <source>Readings from before belong to the coating that was there then and are not used for this rate.</source>
        <translation>Les mesures antérieures relèvent du revêtement d&apos;alors et ne servent pas à cette vitesse.</translation>
    </message>
    <message>
        <source>The coating rose between two visits: replaced without a record? Ask, and write it down.</source>
        <translation>Le revêtement a augmenté entre deux visites : remplacé sans trace écrite ? Demander, et le noter.</translation>
    </message>
    <message>
        <source>A check of gauge %1 was not in order on %2: measure again what it read then.</source>
        <translation>Un contrôle de l&apos;appareil %1 était non conforme le %2 : remesurer ce qu&apos;il a lu alors.</translation>
    </message>
    <message>
        <source>The reading of %1 does not fit; check it.</source>
        <translation>La mesure du %1 ne concorde pas ; la vérifier.</translation>
    </message>
    <message>
        <source>reached</source>
        <translation>atteint</translation>
    </message>
    <message>
        <source>over %1 y</source>
        <translation>plus de %1 ans</translation>
    </message>
    <message>
        <source>%1 y</source>
        <translation>%1 ans</translation>
    </message>
    <message>
        <source>under 1 m</source>
        <translation>moins de 1 mois</translation>
    </message>
    <message>
        <source>%1 m</source>
        <translation>%1 mois</translation>
    </message>
    <message>
        <source>%1 y %2 m</source>
        <translation>%1 an %2 mois</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 à %2</translation>
    </message>
    <message>
        <source>under %1 %</source>
        <translation>moins de %1 %</translation>
    </message>
    <message>
        <source>over %1 %</source>
        <translation>plus de %1 %</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>Zinc gone</source>
        <translation>Zinc épuisé</translation>
    </message>
    <message>
        <source>First maintenance</source>
        <translation>Premier entretien</translation>
    </message>
    <message>
        <source>Structural limit</source>
        <translation>Limite structurelle</translation>
    </message>
    <message>
        <source>Torque under minimum</source>
        <translation>Couple sous le minimum</translation>
    </message>
    <message>
        <source>Grade %1</source>
        <translation>Note %1</translation>
    </message>
    <message>
        <source>No rate yet.</source>
        <translation>Pas encore de vitesse.</translation>
    </message>
    <message>
        <source>%1 µm a year (%2 to %3)</source>
        <translation>%1 µm par an (%2 à %3)</translation>
    </message>
    <message>
        <source>Not measured. Its zone and age say %1.</source>
        <translation>Non mesuré. Sa zone et son âge disent %1.</translation>
    </message>
    <message>
        <source>One visit only. Its zone says %1.</source>
        <translation>Une seule visite. Sa zone dit %1.</translation>
    </message>
    <message>
        <source>Losing %1, %2.</source>
        <translation>Perd %1, %2.</translation>
    </message>
    <message>
        <source>Its own readings carry %1 of the rate, its run, zone and site the rest.</source>
        <translation>Ses propres mesures portent %1 de la vitesse, son tronçon, sa zone et son site le reste.</translation>
    </message>
</context>
<context>
    <name>GateKeys</name>
    <message>
        <source>%1: %2</source>
        <translation>%1 : %2</translation>
    </message>
    <message>
        <source>Closes by itself</source>
        <translation>Se ferme seul</translation>
    </message>
    <message>
        <source>Yes</source>
        <translation>Oui</translation>
    </message>
    <message>
        <source>No</source>
        <translation>Non</translation>
    </message>
    <message>
        <source>Not meant to</source>
        <translation>Pas prévu</translation>
    </message>
    <message>
        <source>Latches</source>
        <translation>S&apos;enclenche</translation>
    </message>
    <message>
        <source>Opens away from the drop</source>
        <translation>S&apos;ouvre à l&apos;opposé du vide</translation>
    </message>
</context>
<context>
    <name>GaugeActs</name>
    <message>
        <source>Undo</source>
        <translation>Annuler</translation>
    </message>
    <message>
        <source>In order</source>
        <translation>Conforme</translation>
    </message>
    <message>
        <source>Not in order</source>
        <translation>Non conforme</translation>
    </message>
    <message>
        <source>touch if not</source>
        <translation>toucher sinon</translation>
    </message>
    <message>
        <source>touch if it is</source>
        <translation>toucher si conforme</translation>
    </message>
    <message>
        <source>In order. Touch to say that it is not</source>
        <translation>Conforme. Toucher pour dire non conforme</translation>
    </message>
    <message>
        <source>Not in order. Touch to say that it is</source>
        <translation>Non conforme. Toucher pour dire conforme</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Enregistrer</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Retour</translation>
    </message>
    <message>
        <source>in order</source>
        <translation>conforme</translation>
    </message>
    <message>
        <source>not in order</source>
        <translation>non conforme</translation>
    </message>
    <message>
        <source>to the walk</source>
        <translation>à la tournée</translation>
    </message>
</context>
<context>
    <name>GaugeCheck</name>
    <message>
        <source>zero</source>
        <translation>zéro</translation>
    </message>
    <message>
        <source>check foil</source>
        <translation>cale étalon</translation>
    </message>
    <message>
        <source>on %1</source>
        <translation>le %1</translation>
    </message>
    <message>
        <source>%1 h %2 min ago</source>
        <translation>il y a %1 h %2 min</translation>
    </message>
    <message>
        <source>%1 min ago</source>
        <translation>il y a %1 min</translation>
    </message>
    <message>
        <source>No coating gauge</source>
        <translation>Pas de jauge de revêtement</translation>
    </message>
    <message>
        <source>Gauge %1</source>
        <translation>Appareil %1</translation>
    </message>
    <message>
        <source>Gauge %1 · zeroed</source>
        <translation>Appareil %1 · zéro fait</translation>
    </message>
    <message>
        <source>zero it soon</source>
        <translation>zéro à refaire</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>No coating gauge is in service in this register.</source>
        <translation>Aucune jauge de revêtement n&apos;est en service dans ce registre.</translation>
    </message>
    <message>
        <source>No zero of it is on record: zero it soon.</source>
        <translation>Aucun zéro enregistré : faire le zéro sans tarder.</translation>
    </message>
    <message numerus="yes">
        <source>Last zeroed or checked %1. A zero is good for %n hour(s): zero it soon.</source>
        <translation>
            <numerusform>Dernier zéro ou contrôle %1. Un zéro vaut %n heure : refaire le zéro sans tarder.</numerusform>
            <numerusform>Dernier zéro ou contrôle %1. Un zéro vaut %n heures : refaire le zéro sans tarder.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Zeroed or checked %1. Good for %n hour(s).</source>
        <translation>
            <numerusform>Zéro ou contrôle %1. Valable %n heure.</numerusform>
            <numerusform>Zéro ou contrôle %1. Valable %n heures.</numerusform>
        </translation>
    </message>
    <message>
        <source>Check foil of %1 µm read %2, %3.</source>
        <translation>Cale étalon de %1 µm lue %2, %3.</translation>
    </message>
    <message>
        <source>Stated error %1 µm.</source>
        <translation>Erreur déclarée %1 µm.</translation>
    </message>
    <message>
        <source>Zero it on the bare plate. What does it read there?</source>
        <translation>Faire le zéro sur la plaque nue. Que lit l&apos;appareil ?</translation>
    </message>
    <message>
        <source>What does the foil say? With its tenth: 50.0 is 5 0 0.</source>
        <translation>Que dit la cale ? Avec son dixième : 50,0 se tape 5 0 0.</translation>
    </message>
    <message>
        <source>Lay the foil on the bare plate and read it.</source>
        <translation>Poser la cale sur la plaque nue et la mesurer.</translation>
    </message>
    <message>
        <source>foil of %1 µm</source>
        <translation>cale de %1 µm</translation>
    </message>
    <message>
        <source>mean %1 µm</source>
        <translation>moyenne %1 µm</translation>
    </message>
    <message>
        <source>%1 · within its %2</source>
        <translation>%1 · dans son erreur de %2</translation>
    </message>
    <message>
        <source>%1 · more than its %2 off</source>
        <translation>%1 · au-delà de son erreur de %2</translation>
    </message>
    <message>
        <source>foil</source>
        <translation>cale</translation>
    </message>
    <message>
        <source>read %1</source>
        <translation>lecture %1</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>vide</translation>
    </message>
</context>
<context>
    <name>GaugeKeys</name>
    <message>
        <source>Zero</source>
        <translation>Zéro</translation>
    </message>
    <message>
        <source>on the bare plate</source>
        <translation>sur la plaque nue</translation>
    </message>
    <message>
        <source>Check foil</source>
        <translation>Cale étalon</translation>
    </message>
    <message>
        <source>a foil of known thickness</source>
        <translation>une cale d&apos;épaisseur connue</translation>
    </message>
    <message>
        <source>Who walks, and with what</source>
        <translation>Qui fait la tournée, avec quoi</translation>
    </message>
    <message>
        <source>Back to the walk</source>
        <translation>Retour à la tournée</translation>
    </message>
</context>
<context>
    <name>GradeKey</name>
    <message>
        <source>Grade %1, %2, last time</source>
        <translation>Note %1, %2, la dernière fois</translation>
    </message>
    <message>
        <source>Grade %1, %2</source>
        <translation>Note %1, %2</translation>
    </message>
    <message>
        <source>now, as last time</source>
        <translation>ce jour, comme la dernière fois</translation>
    </message>
    <message>
        <source>now</source>
        <translation>ce jour</translation>
    </message>
    <message>
        <source>last time</source>
        <translation>dernière fois</translation>
    </message>
</context>
<context>
    <name>HandKeys</name>
    <message>
        <source>Who walks from now on</source>
        <translation>Qui fait la tournée désormais</translation>
    </message>
    <message>
        <source>Coating gauge in the hand</source>
        <translation>Jauge de revêtement en main</translation>
    </message>
    <message>
        <source>Torque wrench in the hand</source>
        <translation>Clé dynamométrique en main</translation>
    </message>
    <message>
        <source>Wall gauge in the hand</source>
        <translation>Jauge de paroi en main</translation>
    </message>
    <message>
        <source>Back to the walk</source>
        <translation>Retour à la tournée</translation>
    </message>
    <message>
        <source>Close visit</source>
        <translation>Clore la visite</translation>
    </message>
</context>
<context>
    <name>HazardCells</name>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Tell somebody</source>
        <translation>Prévenir quelqu&apos;un</translation>
    </message>
</context>
<context>
    <name>HazardLine</name>
    <message numerus="yes">
        <source>%1 and %n more</source>
        <translation>
            <numerusform>%1 et %n autre</numerusform>
            <numerusform>%1 et %n autres</numerusform>
        </translation>
    </message>
    <message>
        <source>no number in the register</source>
        <translation>pas de numéro au registre</translation>
    </message>
    <message>
        <source>%1, %2, not told</source>
        <translation>%1, %2, non signalé</translation>
    </message>
    <message>
        <source>%1, %2, %3</source>
        <translation>%1, %2, %3</translation>
    </message>
    <message>
        <source>told %1</source>
        <translation>signalé : %1</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>%1 told</source>
        <translation>%1 : signalé</translation>
    </message>
</context>
<context>
    <name>InkBar</name>
    <message>
        <source>Undo</source>
        <translation>Annuler</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1 : %2</translation>
    </message>
</context>
<context>
    <name>LabelledTape</name>
    <message>
        <source>Time on site, %1</source>
        <translation>Temps sur site, %1</translation>
    </message>
</context>
<context>
    <name>LabelledTorqueScale</name>
    <message>
        <source>About where it moved, no mark yet</source>
        <translation>Où elle a tourné environ, pas encore de repère</translation>
    </message>
    <message>
        <source>About where it moved, %1 N·m</source>
        <translation>Où elle a tourné environ, %1 N·m</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
</context>
<context>
    <name>LimitWords</name>
    <message>
        <source>wall not measured</source>
        <translation>paroi non mesurée</translation>
    </message>
    <message>
        <source>never checked</source>
        <translation>jamais vérifié</translation>
    </message>
    <message>
        <source>never graded</source>
        <translation>jamais noté</translation>
    </message>
    <message>
        <source>since about %1</source>
        <translation>depuis env. %1</translation>
    </message>
    <message>
        <source>chance today and by %1</source>
        <translation>prob. ce jour et d&apos;ici %1</translation>
    </message>
    <message>
        <source>chance by %1; %2 today</source>
        <translation>prob. d&apos;ici %1 ; %2 ce jour</translation>
    </message>
    <message>
        <source>comes first</source>
        <translation>en premier</translation>
    </message>
    <message>
        <source>close behind</source>
        <translation>juste après</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1 : %2</translation>
    </message>
    <message>
        <source>%1: %2, 8 in 10 %3</source>
        <translation>%1 : %2, 8 fois sur 10 %3</translation>
    </message>
    <message>
        <source>%1: %2, %3</source>
        <translation>%1 : %2, %3</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1; %2</source>
        <translation>%1 ; %2</translation>
    </message>
    <message>
        <source>Due now by the owner&apos;s chance: %1.</source>
        <translation>À faire dès maintenant selon le seuil du propriétaire : %1.</translation>
    </message>
    <message>
        <source>Comes due by the owner&apos;s chance in %1: %2.</source>
        <translation>À faire selon le seuil du propriétaire en %1 : %2.</translation>
    </message>
    <message>
        <source>%1: %2.</source>
        <translation>%1 : %2.</translation>
    </message>
    <message>
        <source>What is not coating leans on how such parts usually go: look by interval too.</source>
        <translation>Hors revêtement, le calcul s&apos;appuie sur l&apos;évolution habituelle de telles pièces : regarder aussi par intervalle.</translation>
    </message>
    <message>
        <source>A projection is an estimate. It is not a certificate.</source>
        <translation>Une projection est une estimation. Ce n&apos;est pas un certificat.</translation>
    </message>
</context>
<context>
    <name>LookKeys</name>
    <message>
        <source>This screen</source>
        <translation>Cet écran</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Clair</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Sombre</translation>
    </message>
    <message>
        <source>Hand on the keys</source>
        <translation>Main sur les touches</translation>
    </message>
    <message>
        <source>Left</source>
        <translation>Gauche</translation>
    </message>
    <message>
        <source>Right</source>
        <translation>Droite</translation>
    </message>
    <message>
        <source>Size of letters</source>
        <translation>Taille des lettres</translation>
    </message>
    <message>
        <source>Contrast</source>
        <translation>Contraste</translation>
    </message>
    <message>
        <source>As drawn</source>
        <translation>Normal</translation>
    </message>
    <message>
        <source>More</source>
        <translation>Plus</translation>
    </message>
    <message>
        <source>Motion</source>
        <translation>Mouvement</translation>
    </message>
    <message>
        <source>Full</source>
        <translation>Complet</translation>
    </message>
    <message>
        <source>Less</source>
        <translation>Moins</translation>
    </message>
    <message>
        <source>Sounds</source>
        <translation>Sons</translation>
    </message>
    <message>
        <source>On</source>
        <translation>Oui</translation>
    </message>
    <message>
        <source>Off</source>
        <translation>Non</translation>
    </message>
</context>
<context>
    <name>Main</name>
    <message>
        <source>Kneerail</source>
        <translation>Kneerail</translation>
    </message>
</context>
<context>
    <name>Marks</name>
    <message>
        <source>closed off</source>
        <translation>barré</translation>
    </message>
</context>
<context>
    <name>MeasureKey</name>
    <message>
        <source>%1, done</source>
        <translation>%1, fait</translation>
    </message>
    <message>
        <source>%1, not done</source>
        <translation>%1, pas fait</translation>
    </message>
</context>
<context>
    <name>MessageBar</name>
    <message>
        <source>Try again</source>
        <translation>Réessayer</translation>
    </message>
    <message>
        <source>I have read it</source>
        <translation>J&apos;ai lu</translation>
    </message>
</context>
<context>
    <name>NoSites</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
</context>
<context>
    <name>NoteHead</name>
    <message>
        <source>%1, its history</source>
        <translation>%1, son historique</translation>
    </message>
</context>
<context>
    <name>OctagonKey</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>PadChoices</name>
    <message>
        <source>Grade</source>
        <translation>Note</translation>
    </message>
    <message>
        <source>Coating</source>
        <translation>Revêtement</translation>
    </message>
    <message>
        <source>Torque</source>
        <translation>Couple</translation>
    </message>
    <message>
        <source>Wall</source>
        <translation>Paroi</translation>
    </message>
    <message>
        <source>Finding</source>
        <translation>Constat</translation>
    </message>
</context>
<context>
    <name>PartNote</name>
    <message>
        <source>grade %1 now</source>
        <translation>note %1 ce jour</translation>
    </message>
    <message>
        <source>last visit grade %1</source>
        <translation>dernière visite note %1</translation>
    </message>
    <message>
        <source>not graded before</source>
        <translation>pas encore noté</translation>
    </message>
</context>
<context>
    <name>PartStory</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>Nothing is drawn.</source>
        <translation>Rien n&apos;est dessiné.</translation>
    </message>
    <message>
        <source> Never wait for a projection to close off a rail that moves.</source>
        <translation> Ne jamais attendre une projection pour barrer un garde-corps qui bouge.</translation>
    </message>
</context>
<context>
    <name>PartWords</name>
    <message>
        <source>post tube</source>
        <translation>tube de poteau</translation>
    </message>
    <message>
        <source>rail</source>
        <translation>lisse</translation>
    </message>
    <message>
        <source>top rail</source>
        <translation>main courante</translation>
    </message>
    <message>
        <source>mid-rail</source>
        <translation>sous-lisse</translation>
    </message>
    <message>
        <source>toe board</source>
        <translation>plinthe</translation>
    </message>
    <message>
        <source>infill</source>
        <translation>remplissage</translation>
    </message>
    <message>
        <source>gate</source>
        <translation>portillon</translation>
    </message>
    <message>
        <source>cut edge</source>
        <translation>bord coupé</translation>
    </message>
    <message>
        <source>welded section</source>
        <translation>profilé soudé</translation>
    </message>
    <message>
        <source>weld</source>
        <translation>soudure</translation>
    </message>
    <message>
        <source>tee</source>
        <translation>té</translation>
    </message>
    <message>
        <source>corner tee</source>
        <translation>té d&apos;angle</translation>
    </message>
    <message>
        <source>cross</source>
        <translation>croix</translation>
    </message>
    <message>
        <source>elbow</source>
        <translation>coude</translation>
    </message>
    <message>
        <source>swivel</source>
        <translation>articulation</translation>
    </message>
    <message>
        <source>sleeve</source>
        <translation>manchon</translation>
    </message>
    <message>
        <source>base flange</source>
        <translation>platine de base</translation>
    </message>
    <message>
        <source>wall flange</source>
        <translation>platine murale</translation>
    </message>
    <message>
        <source>end cap</source>
        <translation>bouchon</translation>
    </message>
    <message>
        <source>clip for infill</source>
        <translation>clip de remplissage</translation>
    </message>
    <message>
        <source>anchor bolts</source>
        <translation>boulons d&apos;ancrage</translation>
    </message>
    <message>
        <source>base fixing</source>
        <translation>ancrage</translation>
    </message>
    <message>
        <source>fitting</source>
        <translation>raccord</translation>
    </message>
    <message>
        <source>top-rail %1</source>
        <translation>%1 de main courante</translation>
    </message>
    <message>
        <source>mid-rail %1</source>
        <translation>sous-lisse %1</translation>
    </message>
    <message>
        <source>mid-rail %1 %2</source>
        <translation>sous-lisse %1 %2</translation>
    </message>
    <message>
        <source>Sound</source>
        <translation>Bon</translation>
    </message>
    <message>
        <source>Dulled</source>
        <translation>Terni</translation>
    </message>
    <message>
        <source>Pits begin</source>
        <translation>Piqûres débutent</translation>
    </message>
    <message>
        <source>Rust begins</source>
        <translation>Rouille débute</translation>
    </message>
    <message>
        <source>Pits spread</source>
        <translation>Piqûres étendues</translation>
    </message>
    <message>
        <source>Rust spread</source>
        <translation>Rouille étendue</translation>
    </message>
    <message>
        <source>Unfit</source>
        <translation>Inapte</translation>
    </message>
    <message>
        <source>split</source>
        <translation>fendu</translation>
    </message>
    <message>
        <source>loose</source>
        <translation>desserré</translation>
    </message>
    <message>
        <source>missing</source>
        <translation>manquant</translation>
    </message>
    <message>
        <source>rust</source>
        <translation>rouille</translation>
    </message>
    <message>
        <source>rust weeping</source>
        <translation>coulure de rouille</translation>
    </message>
    <message>
        <source>bent</source>
        <translation>tordu</translation>
    </message>
    <message>
        <source>knocked</source>
        <translation>heurté</translation>
    </message>
    <message>
        <source>debris or scour</source>
        <translation>débris, affouillement</translation>
    </message>
    <message>
        <source>spread</source>
        <translation>écarté</translation>
    </message>
    <message>
        <source>outside the rule</source>
        <translation>hors règle</translation>
    </message>
    <message>
        <source>moves</source>
        <translation>bouge</translation>
    </message>
    <message>
        <source>paint flaking</source>
        <translation>peinture écaillée</translation>
    </message>
    <message>
        <source>will not close</source>
        <translation>ne ferme pas</translation>
    </message>
    <message>
        <source>Post %1</source>
        <translation>Poteau %1</translation>
    </message>
    <message>
        <source>struck</source>
        <translation>démonté</translation>
    </message>
    <message>
        <source>grade %1</source>
        <translation>note %1</translation>
    </message>
    <message>
        <source>finding %1</source>
        <translation>constat %1</translation>
    </message>
    <message>
        <source>not yet graded this visit</source>
        <translation>pas encore noté à cette visite</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>%1, open</source>
        <translation>%1, ouvert</translation>
    </message>
    <message>
        <source>%1, seen</source>
        <translation>%1, vu</translation>
    </message>
    <message>
        <source>%1, struck</source>
        <translation>%1, démonté</translation>
    </message>
    <message>
        <source>%1, skipped: %2</source>
        <translation>%1, passé : %2</translation>
    </message>
    <message>
        <source>Bay %1 to %2</source>
        <translation>Travée %1 à %2</translation>
    </message>
    <message>
        <source>%1, closed off</source>
        <translation>%1, barrée</translation>
    </message>
    <message>
        <source>post %1, %2</source>
        <translation>poteau %1, %2</translation>
    </message>
    <message>
        <source>bay %1 to %2</source>
        <translation>travée %1 à %2</translation>
    </message>
    <message>
        <source>post %1</source>
        <translation>poteau %1</translation>
    </message>
</context>
<context>
    <name>PictureKeys</name>
    <message>
        <source>Ring it</source>
        <translation>Entourer</translation>
    </message>
    <message>
        <source>Point at it</source>
        <translation>Flécher</translation>
    </message>
    <message>
        <source>One more</source>
        <translation>Une de plus</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Annuler</translation>
    </message>
    <message>
        <source>kept here</source>
        <translation>enregistré ici</translation>
    </message>
</context>
<context>
    <name>PictureStrip</name>
    <message>
        <source>The picture is being made ready. Go on.</source>
        <translation>L&apos;image est en préparation. Continuer.</translation>
    </message>
    <message>
        <source>Picture from this tablet. The newest comes first.</source>
        <translation>Image de cette tablette. La plus récente d&apos;abord.</translation>
    </message>
    <message>
        <source>No camera. Keep the finding, add a picture later.</source>
        <translation>Pas d&apos;appareil photo. Enregistrer le constat, ajouter une image plus tard.</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Retour</translation>
    </message>
    <message>
        <source>Picture %1, %2</source>
        <translation>Image %1, %2</translation>
    </message>
</context>
<context>
    <name>PictureWords</name>
    <message>
        <source>%1: %2 The file stays where it is.</source>
        <translation>%1 : %2 Le fichier reste où il est.</translation>
    </message>
    <message>
        <source>This is no whole picture, so it was not added.</source>
        <translation>L&apos;image n&apos;est pas entière, elle n&apos;a donc pas été ajoutée.</translation>
    </message>
    <message>
        <source>It cannot be read.</source>
        <translation>Elle ne peut être lue.</translation>
    </message>
    <message>
        <source>It is larger than the 64 MB that are kept.</source>
        <translation>Elle dépasse les 64 MB qui sont enregistrés.</translation>
    </message>
    <message>
        <source>Pictures are kept as JPEG, PNG or WebP; this is none.</source>
        <translation>Les images sont enregistrées en JPEG, PNG ou WebP ; ce n&apos;en est pas une.</translation>
    </message>
</context>
<context>
    <name>PostKeys</name>
    <message>
        <source>%1  %2</source>
        <translation>%1  %2</translation>
    </message>
    <message>
        <source>Pushed, as last time</source>
        <translation>Poussé, comme la dernière fois</translation>
    </message>
    <message>
        <source>Looked, as last time</source>
        <translation>Regardé, comme la dernière fois</translation>
    </message>
    <message>
        <source>by eye, bay not pushed</source>
        <translation>à l&apos;œil, travée non poussée</translation>
    </message>
</context>
<context>
    <name>PostSteps</name>
    <message>
        <source>back</source>
        <translation>retour</translation>
    </message>
    <message>
        <source>Skip, say why</source>
        <translation>Passer, dire pourquoi</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Annuler</translation>
    </message>
    <message>
        <source>on, leave open</source>
        <translation>suite, laisser ouvert</translation>
    </message>
</context>
<context>
    <name>Prepare</name>
    <message>
        <source>Runs; marks show the parts to measure</source>
        <translation>Tronçons ; les repères montrent les pièces à mesurer</translation>
    </message>
    <message>
        <source>arrow heads show the parts to measure; touch a line for its first part</source>
        <translation>les pointes montrent les pièces à mesurer ; toucher une ligne pour sa première pièce</translation>
    </message>
    <message>
        <source>What to do, first things first</source>
        <translation>À faire, le premier d&apos;abord</translation>
    </message>
    <message>
        <source>more below: push the list up</source>
        <translation>suite dessous : pousser la liste vers le haut</translation>
    </message>
    <message>
        <source>The day could not be prepared.</source>
        <translation>La journée n&apos;a pas pu être préparée.</translation>
    </message>
</context>
<context>
    <name>PrepareCells</name>
    <message>
        <source>Prepare</source>
        <translation>Préparer</translation>
    </message>
    <message>
        <source>Site</source>
        <translation>Site</translation>
    </message>
</context>
<context>
    <name>PrepareModel</name>
    <message numerus="yes">
        <source>%1 %Ln more left out.</source>
        <translation>
            <numerusform>%1 Laissé de côté : %Ln.</numerusform>
            <numerusform>%1 Laissés de côté : %Ln.</numerusform>
        </translation>
    </message>
    <message>
        <source>left out</source>
        <translation>laissé de côté</translation>
    </message>
    <message>
        <source>%1, %2. %3 %4</source>
        <translation>%1, %2. %3 %4</translation>
    </message>
    <message>
        <source>take</source>
        <translation>prendre</translation>
    </message>
    <message>
        <source>leave</source>
        <translation>laisser</translation>
    </message>
    <message>
        <source>%1, %2, %3</source>
        <translation>%1, %2, %3</translation>
    </message>
    <message>
        <source>%1, carried, %2</source>
        <translation>%1, emporté, %2</translation>
    </message>
    <message>
        <source>%1, not carried, %2</source>
        <translation>%1, non emporté, %2</translation>
    </message>
    <message>
        <source>Not kept: %1 What is chosen stands on this screen alone.</source>
        <translation>Non enregistré : %1 Le choix n&apos;est que sur cet écran.</translation>
    </message>
    <message numerus="yes">
        <source>%L1 of %Ln post(s) looked at, the rest not reached</source>
        <translation>
            <numerusform>%L1 sur %Ln poteau regardé, le reste non atteint</numerusform>
            <numerusform>%L1 sur %Ln poteaux regardés, le reste non atteint</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) by eye</source>
        <translation>
            <numerusform>%Ln poteau à l&apos;œil</numerusform>
            <numerusform>%Ln poteaux à l&apos;œil</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%L1 of %Ln post(s) with an instrument, the rest by eye</source>
        <translation>
            <numerusform>%L1 sur %Ln poteau à l&apos;instrument, le reste à l&apos;œil</numerusform>
            <numerusform>%L1 sur %Ln poteaux à l&apos;instrument, le reste à l&apos;œil</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln thing(s) that come first</source>
        <translation>
            <numerusform>%Ln point à traiter d&apos;abord</numerusform>
            <numerusform>%Ln points à traiter d&apos;abord</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) to look at</source>
        <translation>
            <numerusform>%Ln poteau à regarder</numerusform>
            <numerusform>%Ln poteaux à regarder</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln part(s) to measure</source>
        <translation>
            <numerusform>%Ln pièce à mesurer</numerusform>
            <numerusform>%Ln pièces à mesurer</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln screw(s) to sign</source>
        <translation>
            <numerusform>%Ln vis à signer</numerusform>
            <numerusform>%Ln vis à signer</numerusform>
        </translation>
    </message>
    <message>
        <source>Left out: %1.</source>
        <translation>Laissé de côté : %1.</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>Nothing that is asked for is left out.</source>
        <translation>Rien de ce qui est demandé n&apos;est laissé de côté.</translation>
    </message>
    <message>
        <source>Nothing is left out; %1 to spare.</source>
        <translation>Rien n&apos;est laissé de côté ; %1 de reste.</translation>
    </message>
</context>
<context>
    <name>PrepareSide</name>
    <message>
        <source>Instruments</source>
        <translation>Instruments</translation>
    </message>
    <message>
        <source>Sites to carry</source>
        <translation>Sites à emporter</translation>
    </message>
    <message>
        <source>All of them are on this disk; nothing has to be loaded.</source>
        <translation>Tous sont sur ce disque ; rien n&apos;est à charger.</translation>
    </message>
    <message>
        <source>more below: push it up</source>
        <translation>suite dessous : pousser vers le haut</translation>
    </message>
    <message>
        <source>Keep and walk it</source>
        <translation>Enregistrer, y aller</translation>
    </message>
    <message>
        <source>%1 · %2 carried</source>
        <translation>%1 · %2 emportés</translation>
    </message>
</context>
<context>
    <name>PrepareTime</name>
    <message>
        <source>Time on site</source>
        <translation>Temps sur site</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
</context>
<context>
    <name>ProbeKeys</name>
    <message>
        <source>bright</source>
        <translation>brillant</translation>
    </message>
    <message>
        <source>dull</source>
        <translation>terne</translation>
    </message>
    <message>
        <source>rust</source>
        <translation>rouille</translation>
    </message>
    <message>
        <source>paint</source>
        <translation>peinture</translation>
    </message>
    <message>
        <source>at most this</source>
        <translation>au plus ceci</translation>
    </message>
    <message>
        <source>Under the probe: %1</source>
        <translation>Sous la sonde : %1</translation>
    </message>
    <message>
        <source>next face</source>
        <translation>face suivante</translation>
    </message>
    <message>
        <source>The next face of this part, now %1</source>
        <translation>La face suivante de cette pièce, actuelle : %1</translation>
    </message>
</context>
<context>
    <name>RegisterRun</name>
    <message>
        <source>Lay out a run by rule</source>
        <translation>Tracer un tronçon par règle</translation>
    </message>
    <message>
        <source>The run as a sentence. %1</source>
        <translation>Le tronçon en une phrase. %1</translation>
    </message>
</context>
<context>
    <name>RoomTags</name>
    <message>
        <source>Sites</source>
        <translation>Sites</translation>
    </message>
    <message>
        <source>Walk</source>
        <translation>Tournée</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Constats</translation>
    </message>
    <message>
        <source>Forecast</source>
        <translation>Prévision</translation>
    </message>
</context>
<context>
    <name>RuleFoot</name>
    <message>
        <source>Nothing is in the register until you keep it.</source>
        <translation>Rien n&apos;est au registre avant d&apos;enregistrer.</translation>
    </message>
    <message>
        <source>This register can only be read here: nothing can be kept.</source>
        <translation>Ce registre ne peut qu&apos;être lu ici : rien ne peut être enregistré.</translation>
    </message>
    <message>
        <source>Sites</source>
        <translation>Sites</translation>
    </message>
    <message>
        <source>it waits</source>
        <translation>en attente</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Annuler</translation>
    </message>
    <message>
        <source>Keep this run</source>
        <translation>Enregistrer ce tronçon</translation>
    </message>
</context>
<context>
    <name>RunBandItem</name>
    <message numerus="yes">
        <source>%1, %n post(s)</source>
        <translation>
            <numerusform>%1, %n poteau</numerusform>
            <numerusform>%1, %n poteaux</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RunLineItem</name>
    <message>
        <source>no post</source>
        <translation>pas de poteau</translation>
    </message>
    <message numerus="yes">
        <source>post %1 of %2, %n open</source>
        <translation>
            <numerusform>poteau %1 sur %2, %n ouvert</numerusform>
            <numerusform>poteau %1 sur %2, %n ouverts</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RunPieceWords</name>
    <message>
        <source>a name</source>
        <translation>un nom</translation>
    </message>
    <message>
        <source>of the run</source>
        <translation>du tronçon</translation>
    </message>
    <message>
        <source>name of the run</source>
        <translation>nom du tronçon</translation>
    </message>
    <message numerus="yes">
        <source>post(s)</source>
        <translation>
            <numerusform>poteau</numerusform>
            <numerusform>poteaux</numerusform>
        </translation>
    </message>
    <message>
        <source>from %1</source>
        <translation>dès le %1</translation>
    </message>
    <message>
        <source>numbers</source>
        <translation>numéros</translation>
    </message>
    <message>
        <source>at %1</source>
        <translation>tous les %1</translation>
    </message>
    <message>
        <source>post to post</source>
        <translation>entre poteaux</translation>
    </message>
    <message>
        <source>high</source>
        <translation>de haut</translation>
    </message>
    <message numerus="yes">
        <source>rail(s)</source>
        <translation>
            <numerusform>lisse</numerusform>
            <numerusform>lisses</numerusform>
        </translation>
    </message>
    <message>
        <source>tube</source>
        <translation>tube</translation>
    </message>
    <message>
        <source>at the foot</source>
        <translation>au pied</translation>
    </message>
    <message>
        <source>at each rail</source>
        <translation>à chaque lisse</translation>
    </message>
    <message>
        <source>and cross</source>
        <translation>et croix</translation>
    </message>
    <message>
        <source>at both ends</source>
        <translation>aux deux bouts</translation>
    </message>
    <message>
        <source>and end cap at both ends</source>
        <translation>et bouchon aux deux bouts</translation>
    </message>
    <message>
        <source>mesh infill</source>
        <translation>grillage</translation>
    </message>
    <message>
        <source>rails only</source>
        <translation>lisses seules</translation>
    </message>
    <message>
        <source>and toe board</source>
        <translation>et plinthe</translation>
    </message>
    <message>
        <source>no toe board</source>
        <translation>sans plinthe</translation>
    </message>
    <message>
        <source>no sleeve</source>
        <translation>sans manchon</translation>
    </message>
    <message>
        <source>in the rails</source>
        <translation>dans les lisses</translation>
    </message>
    <message>
        <source>sleeve coupling</source>
        <translation>manchon</translation>
    </message>
    <message numerus="yes">
        <source>every %n bay(s)</source>
        <translation>
            <numerusform>une fois par %n travée</numerusform>
            <numerusform>toutes les %n travées</numerusform>
        </translation>
    </message>
    <message>
        <source>in service</source>
        <translation>en service</translation>
    </message>
    <message>
        <source>day not known</source>
        <translation>jour non connu</translation>
    </message>
    <message>
        <source>in service since</source>
        <translation>en service depuis</translation>
    </message>
    <message>
        <source>drop</source>
        <translation>hauteur de chute</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>non connu</translation>
    </message>
    <message>
        <source>drop behind it</source>
        <translation>de chute derrière</translation>
    </message>
    <message>
        <source>who walks here</source>
        <translation>qui passe ici</translation>
    </message>
    <message>
        <source>behind it</source>
        <translation>derrière</translation>
    </message>
    <message>
        <source>what is below</source>
        <translation>ce qui est dessous</translation>
    </message>
    <message>
        <source>below</source>
        <translation>en dessous</translation>
    </message>
    <message>
        <source>a zone</source>
        <translation>une zone</translation>
    </message>
    <message>
        <source>this site has none yet</source>
        <translation>ce site n&apos;en a pas encore</translation>
    </message>
    <message>
        <source>of the site</source>
        <translation>du site</translation>
    </message>
</context>
<context>
    <name>RunSentence</name>
    <message>
        <source>Whole run, %1</source>
        <translation>Tronçon entier, %1</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>%1 was typed and does not fit: the run stands as it was.</source>
        <translation>%1 a été tapé et ne convient pas : le tronçon reste comme il était.</translation>
    </message>
    <message>
        <source>Not remembered, should the tablet go off: %1</source>
        <translation>Non mémorisé, si la tablette s&apos;éteint : %1</translation>
    </message>
    <message>
        <source>Not kept: %1 The sentence stays here.</source>
        <translation>Non enregistré : %1 La phrase reste ici.</translation>
    </message>
</context>
<context>
    <name>RunWords</name>
    <message>
        <source>%1 m</source>
        <translation>%1 m</translation>
    </message>
    <message>
        <source>%1 × %2 mm</source>
        <translation>%1 × %2 mm</translation>
    </message>
    <message>
        <source>welded, aluminium</source>
        <translation>soudé, aluminium</translation>
    </message>
    <message>
        <source>slip-on, aluminium</source>
        <translation>emboîté, aluminium</translation>
    </message>
    <message>
        <source>welded, stainless</source>
        <translation>soudé, inox</translation>
    </message>
    <message>
        <source>slip-on, stainless</source>
        <translation>emboîté, inox</translation>
    </message>
    <message>
        <source>welded, steel</source>
        <translation>soudé, acier</translation>
    </message>
    <message>
        <source>slip-on, steel</source>
        <translation>emboîté, acier</translation>
    </message>
    <message>
        <source>hot-dip zinc</source>
        <translation>zinc à chaud</translation>
    </message>
    <message>
        <source>zinc plus paint</source>
        <translation>zinc et peinture</translation>
    </message>
    <message>
        <source>paint on steel</source>
        <translation>peinture sur acier</translation>
    </message>
    <message>
        <source>anodised</source>
        <translation>anodisé</translation>
    </message>
    <message>
        <source>bare</source>
        <translation>brut</translation>
    </message>
    <message>
        <source>base flange</source>
        <translation>platine de base</translation>
    </message>
    <message>
        <source>wall flange</source>
        <translation>platine murale</translation>
    </message>
    <message>
        <source>welded plate</source>
        <translation>platine soudée</translation>
    </message>
    <message>
        <source>cast in</source>
        <translation>scellé</translation>
    </message>
    <message>
        <source>socket</source>
        <translation>fourreau</translation>
    </message>
    <message>
        <source>three-way tee</source>
        <translation>té à trois voies</translation>
    </message>
    <message>
        <source>corner tee</source>
        <translation>té d&apos;angle</translation>
    </message>
    <message>
        <source>cross</source>
        <translation>croix</translation>
    </message>
    <message>
        <source>elbow</source>
        <translation>coude</translation>
    </message>
    <message>
        <source>adjustable swivel</source>
        <translation>articulation réglable</translation>
    </message>
    <message>
        <source>end cap</source>
        <translation>bouchon</translation>
    </message>
    <message>
        <source>rails</source>
        <translation>lisses</translation>
    </message>
    <message>
        <source>mesh infill</source>
        <translation>grillage</translation>
    </message>
    <message>
        <source>a gate</source>
        <translation>un portillon</translation>
    </message>
    <message>
        <source>open gap</source>
        <translation>ouverture libre</translation>
    </message>
    <message>
        <source>walkers</source>
        <translation>piétons</translation>
    </message>
    <message>
        <source>children</source>
        <translation>enfants</translation>
    </message>
    <message>
        <source>a crowd</source>
        <translation>une foule</translation>
    </message>
    <message>
        <source>staff</source>
        <translation>personnel</translation>
    </message>
    <message>
        <source>cyclists</source>
        <translation>cyclistes</translation>
    </message>
    <message>
        <source>ground</source>
        <translation>sol</translation>
    </message>
    <message>
        <source>water</source>
        <translation>eau</translation>
    </message>
    <message>
        <source>a road</source>
        <translation>une route</translation>
    </message>
    <message>
        <source>machinery</source>
        <translation>machines</translation>
    </message>
</context>
<context>
    <name>ScaleBar</name>
    <message>
        <source>All runs are at one scale. Rust is drawn where the last grade was 3 or more.</source>
        <translation>Tous les tronçons sont à la même échelle. La rouille est dessinée où la dernière note était 3 ou plus.</translation>
    </message>
    <message>
        <source>0</source>
        <translation>0</translation>
    </message>
    <message>
        <source>%L1 m</source>
        <translation>%L1 m</translation>
    </message>
    <message>
        <source>all runs at one scale; touch a run to walk it</source>
        <translation>tous les tronçons à la même échelle ; toucher un tronçon pour sa tournée</translation>
    </message>
    <message>
        <source>rust drawn where last graded 3 or more; a chalk ring is a finding</source>
        <translation>rouille dessinée où la dernière note est 3 ou plus ; un cercle de craie est un constat</translation>
    </message>
</context>
<context>
    <name>SealSlide</name>
    <message>
        <source>Slide the sleeve over the joint to seal</source>
        <translation>Glisser le manchon sur le joint pour sceller</translation>
    </message>
    <message>
        <source>Or hold Enter for two seconds</source>
        <translation>Ou tenir Entrée deux secondes</translation>
    </message>
    <message>
        <source>Sealed</source>
        <translation>Scellé</translation>
    </message>
    <message>
        <source>Slide</source>
        <translation>Glisser</translation>
    </message>
</context>
<context>
    <name>SentenceField</name>
    <message>
        <source>It cannot wait</source>
        <translation>Ne peut attendre</translation>
    </message>
    <message>
        <source>Say so</source>
        <translation>Le dire</translation>
    </message>
    <message>
        <source>Only the first %1 characters are kept</source>
        <translation>Seuls les %1 premiers caractères sont enregistrés</translation>
    </message>
</context>
<context>
    <name>SentenceKeys</name>
    <message>
        <source>%1, %2, does not fit</source>
        <translation>%1, %2, ne convient pas</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>SiteBand</name>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>The sheet of %1</source>
        <translation>La fiche de %1</translation>
    </message>
    <message>
        <source>Prepare a day</source>
        <translation>Préparer une journée</translation>
    </message>
    <message>
        <source>Prepare a day at %1</source>
        <translation>Préparer une journée à %1</translation>
    </message>
</context>
<context>
    <name>SiteFacts</name>
    <message>
        <source>Nothing is in the register until you keep this site. Its runs are laid out after that.</source>
        <translation>Rien n&apos;est au registre avant d&apos;enregistrer ce site. Ses tronçons se tracent après.</translation>
    </message>
    <message>
        <source>Walk %1: %2</source>
        <translation>Parcourir %1 : %2</translation>
    </message>
    <message>
        <source>Change</source>
        <translation>Modifier</translation>
    </message>
    <message>
        <source>Change %1</source>
        <translation>Modifier %1</translation>
    </message>
    <message>
        <source>Told when something cannot wait</source>
        <translation>À prévenir si cela ne peut attendre</translation>
    </message>
</context>
<context>
    <name>SiteFoot</name>
    <message>
        <source>This register can only be read here: nothing can be kept.</source>
        <translation>Ce registre ne peut qu&apos;être lu ici : rien ne peut être enregistré.</translation>
    </message>
    <message>
        <source>Not in the register yet.</source>
        <translation>Pas encore au registre.</translation>
    </message>
    <message>
        <source>Touch a key and say what it is.</source>
        <translation>Toucher une touche et dire ce que c&apos;est.</translation>
    </message>
    <message>
        <source>Touch a key to change what it says, or a run to walk it.</source>
        <translation>Toucher une touche pour changer ce qu&apos;elle dit, ou un tronçon pour le parcourir.</translation>
    </message>
    <message>
        <source>Sites</source>
        <translation>Sites</translation>
    </message>
    <message>
        <source>it waits</source>
        <translation>en attente</translation>
    </message>
    <message>
        <source>Lay out a run</source>
        <translation>Tracer un tronçon</translation>
    </message>
    <message>
        <source>Keep this site</source>
        <translation>Enregistrer ce site</translation>
    </message>
    <message>
        <source>Keep the change</source>
        <translation>Enregistrer</translation>
    </message>
</context>
<context>
    <name>SiteRunDrawing</name>
    <message>
        <source>%1 · cannot be read</source>
        <translation>%1 · illisible</translation>
    </message>
</context>
<context>
    <name>SiteRunsModel</name>
    <message numerus="yes">
        <source>%1, %n post(s)</source>
        <translation>
            <numerusform>%1, %n poteau</numerusform>
            <numerusform>%1, %n poteaux</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SiteSentence</name>
    <message>
        <source>Not kept: %1 What was said stays here.</source>
        <translation>Non enregistré : %1 Ce qui a été dit reste ici.</translation>
    </message>
    <message>
        <source>not yet received</source>
        <translation>pas encore reçu</translation>
    </message>
    <message>
        <source>no number</source>
        <translation>pas de numéro</translation>
    </message>
    <message>
        <source>Whose rails are these? The name of the owner</source>
        <translation>À qui sont ces garde-corps ? Le nom du propriétaire</translation>
    </message>
    <message>
        <source>What is the site called?</source>
        <translation>Comment s&apos;appelle le site ?</translation>
    </message>
    <message>
        <source>What is the zone called? Sea side, north face</source>
        <translation>Comment s&apos;appelle la zone ? Côté mer, face nord</translation>
    </message>
    <message>
        <source>What is the depot called?</source>
        <translation>Comment s&apos;appelle le dépôt ?</translation>
    </message>
    <message>
        <source>Who is told, and the number: Rhona Hale 01632 960106</source>
        <translation>Qui prévenir, et le numéro : Rhona Hale 01632 960106</translation>
    </message>
    <message>
        <source>Zone %1</source>
        <translation>Zone %1</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>whose rails</source>
        <translation>à qui</translation>
    </message>
    <message>
        <source>the owner</source>
        <translation>le propriétaire</translation>
    </message>
    <message>
        <source>a name</source>
        <translation>un nom</translation>
    </message>
    <message>
        <source>name of the site</source>
        <translation>nom du site</translation>
    </message>
    <message>
        <source>air not known</source>
        <translation>air non connu</translation>
    </message>
    <message>
        <source>a zone</source>
        <translation>une zone</translation>
    </message>
    <message>
        <source>one more zone</source>
        <translation>encore une zone</translation>
    </message>
    <message>
        <source>of like exposure</source>
        <translation>d&apos;exposition semblable</translation>
    </message>
    <message>
        <source>no depot</source>
        <translation>aucun dépôt</translation>
    </message>
    <message>
        <source>depot</source>
        <translation>dépôt</translation>
    </message>
    <message>
        <source>no rule set</source>
        <translation>aucun jeu de règles</translation>
    </message>
    <message>
        <source>limits it is held to</source>
        <translation>limites à tenir</translation>
    </message>
    <message>
        <source>told, %1</source>
        <translation>prévenu, %1</translation>
    </message>
    <message>
        <source>nobody</source>
        <translation>personne</translation>
    </message>
    <message>
        <source>one more</source>
        <translation>encore un</translation>
    </message>
    <message>
        <source>to tell</source>
        <translation>à prévenir</translation>
    </message>
    <message>
        <source>Corrosivity of the air, ISO 9223</source>
        <translation>Corrosivité de l&apos;air, ISO 9223</translation>
    </message>
    <message>
        <source>It is</source>
        <translation>Elle est</translation>
    </message>
    <message>
        <source>another name</source>
        <translation>un autre nom</translation>
    </message>
    <message>
        <source>Which depot keeps it?</source>
        <translation>Quel dépôt s&apos;en charge ?</translation>
    </message>
    <message>
        <source>another depot</source>
        <translation>un autre dépôt</translation>
    </message>
    <message>
        <source>There is no rule set in the register: nothing can be held to one yet.</source>
        <translation>Le registre n&apos;a aucun jeu de règles : rien ne peut encore y être soumis.</translation>
    </message>
    <message>
        <source>Which limits is it held to?</source>
        <translation>À quelles limites est-il soumis ?</translation>
    </message>
    <message>
        <source>When something cannot wait</source>
        <translation>Si cela ne peut attendre</translation>
    </message>
    <message>
        <source>is told</source>
        <translation>est prévenu</translation>
    </message>
    <message>
        <source>is not told</source>
        <translation>n&apos;est pas prévenu</translation>
    </message>
    <message>
        <source>Who else is told when something cannot wait?</source>
        <translation>Qui d&apos;autre prévenir si cela ne peut attendre ?</translation>
    </message>
    <message>
        <source>somebody else</source>
        <translation>quelqu&apos;un d&apos;autre</translation>
    </message>
    <message>
        <source>%1: %2. No rate of its own: the middle of its class holds.</source>
        <translation>%1 : %2. Pas de vitesse propre : le milieu de sa classe vaut.</translation>
    </message>
    <message>
        <source>%1: %2. Zinc loses %3 µm in its first year.</source>
        <translation>%1 : %2. Le zinc perd %3 µm la première année.</translation>
    </message>
    <message>
        <source>%1 high</source>
        <translation>%1 de haut</translation>
    </message>
    <message>
        <source>drop %1</source>
        <translation>chute %1</translation>
    </message>
    <message>
        <source>drop not known</source>
        <translation>chute non connue</translation>
    </message>
    <message>
        <source>%1 below</source>
        <translation>%1 en dessous</translation>
    </message>
    <message>
        <source>%1 behind it</source>
        <translation>%1 derrière</translation>
    </message>
    <message>
        <source>struck for a season</source>
        <translation>démonté pour une saison</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>Nobody is named to be told when something cannot wait.</source>
        <translation>Personne n&apos;est désigné à prévenir si cela ne peut attendre.</translation>
    </message>
    <message>
        <source>No rule set: nothing here is held to a limit.</source>
        <translation>Aucun jeu de règles : rien ici n&apos;est soumis à une limite.</translation>
    </message>
    <message>
        <source>Held to %1.</source>
        <translation>Soumis à : %1.</translation>
    </message>
</context>
<context>
    <name>SiteSheet</name>
    <message>
        <source>A new site</source>
        <translation>Un nouveau site</translation>
    </message>
    <message>
        <source>The sheet of %1</source>
        <translation>La fiche de %1</translation>
    </message>
    <message>
        <source>The site as a sentence</source>
        <translation>Le site en une phrase</translation>
    </message>
</context>
<context>
    <name>SiteWords</name>
    <message>
        <source>open</source>
        <translation>exposé</translation>
    </message>
    <message>
        <source>sheltered</source>
        <translation>abrité</translation>
    </message>
    <message>
        <source>spray</source>
        <translation>embruns</translation>
    </message>
    <message>
        <source>under water at times</source>
        <translation>parfois immergé</translation>
    </message>
    <message>
        <source>de-icing salt</source>
        <translation>sel de déverglaçage</translation>
    </message>
    <message>
        <source>%1 and %2</source>
        <translation>%1 et %2</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>%1 is down since %2</source>
        <translation>%1 est démonté depuis le %2</translation>
    </message>
    <message numerus="yes">
        <source>%n post(s) to put back</source>
        <translation>
            <numerusform>%n poteau à remettre</numerusform>
            <numerusform>%n poteaux à remettre</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n screw(s) to sign</source>
        <translation>
            <numerusform>%n vis à signer</numerusform>
            <numerusform>%n vis à signer</numerusform>
        </translation>
    </message>
    <message>
        <source>%1.</source>
        <translation>%1.</translation>
    </message>
    <message>
        <source>%1: %2.</source>
        <translation>%1 : %2.</translation>
    </message>
    <message>
        <source> Nothing closes the gap.</source>
        <translation> Rien ne barre l&apos;ouverture.</translation>
    </message>
    <message numerus="yes">
        <source>%n finding(s) cannot wait, not made safe.</source>
        <translation>
            <numerusform>%n constat ne peut attendre, non mis en sécurité.</numerusform>
            <numerusform>%n constats ne peuvent attendre, non mis en sécurité.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n bay(s) closed off.</source>
        <translation>
            <numerusform>%n travée barrée.</numerusform>
            <numerusform>%n travées barrées.</numerusform>
        </translation>
    </message>
    <message>
        <source>, on %1</source>
        <translation>, sur %1</translation>
    </message>
    <message>
        <source>, most on %1</source>
        <translation>, surtout sur %1</translation>
    </message>
    <message>
        <source>No part of it can be reckoned yet.</source>
        <translation>Aucune pièce ne peut encore être calculée.</translation>
    </message>
    <message>
        <source>By now</source>
        <translation>À ce jour</translation>
    </message>
    <message>
        <source>By then</source>
        <translation>D&apos;ici là</translation>
    </message>
    <message>
        <source>%1 no part will be without zinc.</source>
        <translation>%1, aucune pièce sans zinc.</translation>
    </message>
    <message numerus="yes">
        <source>%1 %n part(s) may be without zinc%2.</source>
        <translation>
            <numerusform>%1, %n pièce peut-être sans zinc%2.</numerusform>
            <numerusform>%1, %n pièces peut-être sans zinc%2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 %n part(s) will likely be without zinc%2</source>
        <translation>
            <numerusform>%1, %n pièce probablement sans zinc%2</numerusform>
            <numerusform>%1, %n pièces probablement sans zinc%2</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1; %n more may be.</source>
        <translation>
            <numerusform>%1 ; %n autre peut-être.</numerusform>
            <numerusform>%1 ; %n autres peut-être.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n part(s) at grade %1%2.</source>
        <translation>
            <numerusform>%n pièce à la note %1%2.</numerusform>
            <numerusform>%n pièces à la note %1%2.</numerusform>
        </translation>
    </message>
    <message>
        <source>Nothing above grade 2.</source>
        <translation>Rien au-dessus de la note 2.</translation>
    </message>
    <message>
        <source>Nobody has graded a part yet.</source>
        <translation>Personne n&apos;a encore noté de pièce.</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s)</source>
        <translation>
            <numerusform>%Ln poteau</numerusform>
            <numerusform>%Ln poteaux</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln fitting(s)</source>
        <translation>
            <numerusform>%Ln raccord</numerusform>
            <numerusform>%Ln raccords</numerusform>
        </translation>
    </message>
    <message>
        <source>Last visit %1</source>
        <translation>Dernière visite le %1</translation>
    </message>
    <message>
        <source>Nobody has been here yet</source>
        <translation>Personne n&apos;est encore venu</translation>
    </message>
    <message>
        <source>no day</source>
        <translation>aucun jour</translation>
    </message>
    <message>
        <source>agreed yet</source>
        <translation>encore convenu</translation>
    </message>
    <message>
        <source>up again by</source>
        <translation>était à remonter</translation>
    </message>
    <message>
        <source>re-erect by</source>
        <translation>remonter avant</translation>
    </message>
    <message>
        <source>was due</source>
        <translation>était à faire</translation>
    </message>
    <message>
        <source>due</source>
        <translation>à faire</translation>
    </message>
    <message>
        <source>its wall</source>
        <translation>sa paroi</translation>
    </message>
    <message>
        <source>loose set screws</source>
        <translation>des vis de pression desserrées</translation>
    </message>
    <message>
        <source>its coating</source>
        <translation>son revêtement</translation>
    </message>
    <message>
        <source>grade %1</source>
        <translation>note %1</translation>
    </message>
    <message>
        <source>%1 comes up to your chance of %2 for %3 on %4; half of that time is over</source>
        <translation>%1 atteint votre seuil de %2 pour %3 le %4 ; la moitié de ce temps est écoulée</translation>
    </message>
    <message>
        <source>%1 is past your chance of %2 for %3 already, with %4</source>
        <translation>%1 dépasse déjà votre seuil de %2 pour %3, avec %4</translation>
    </message>
    <message numerus="yes">
        <source>%1; %n more part(s) as well</source>
        <translation>
            <numerusform>%1 ; %n autre pièce aussi</numerusform>
            <numerusform>%1 ; %n autres pièces aussi</numerusform>
        </translation>
    </message>
    <message>
        <source>a look before the %1 of %2</source>
        <translation>un regard avant l&apos;événement (%1, %2)</translation>
    </message>
    <message>
        <source>nobody has come since the %1 of %2</source>
        <translation>personne n&apos;est venu depuis l&apos;événement (%1, %2)</translation>
    </message>
    <message>
        <source>nobody has looked at the whole of it yet</source>
        <translation>personne ne l&apos;a encore regardé en entier</translation>
    </message>
    <message numerus="yes">
        <source>the owner&apos;s longest interval of %n day(s) ends</source>
        <translation>
            <numerusform>fin de l&apos;intervalle maximal du propriétaire (%n jour)</numerusform>
            <numerusform>fin de l&apos;intervalle maximal du propriétaire (%n jours)</numerusform>
        </translation>
    </message>
    <message>
        <source>the coating goes faster than its class</source>
        <translation>le revêtement part plus vite que sa classe</translation>
    </message>
    <message>
        <source>one more reading of %1 would tell its rate by then</source>
        <translation>une mesure de plus (%1) donnerait sa vitesse d&apos;ici là</translation>
    </message>
    <message>
        <source>Proposed: %1.</source>
        <translation>Proposé : %1.</translation>
    </message>
    <message>
        <source>Brought forward from %1: %2.</source>
        <translation>Avancé, était prévu %1 : %2.</translation>
    </message>
    <message>
        <source>ice</source>
        <translation>glace</translation>
    </message>
    <message>
        <source>flood</source>
        <translation>crue</translation>
    </message>
    <message>
        <source>impact</source>
        <translation>choc</translation>
    </message>
    <message>
        <source>crowd</source>
        <translation>foule</translation>
    </message>
    <message>
        <source>storm</source>
        <translation>tempête</translation>
    </message>
    <message>
        <source>near miss</source>
        <translation>presque-accident</translation>
    </message>
    <message>
        <source>accident</source>
        <translation>accident</translation>
    </message>
    <message>
        <source>damage on purpose</source>
        <translation>dégradation volontaire</translation>
    </message>
    <message>
        <source>event</source>
        <translation>événement</translation>
    </message>
</context>
<context>
    <name>Sites</name>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Sites</source>
        <translation>Sites</translation>
    </message>
    <message>
        <source>more below: push the list up</source>
        <translation>suite dessous : pousser la liste vers le haut</translation>
    </message>
    <message>
        <source>The sites could not be read again; they stand as they were. %1</source>
        <translation>Les sites n&apos;ont pas pu être relus ; ils restent tels quels. %1</translation>
    </message>
    <message>
        <source>No rail is drawn yet.</source>
        <translation>Aucun garde-corps n&apos;est encore dessiné.</translation>
    </message>
    <message>
        <source>The sites could not be read.</source>
        <translation>Les sites n&apos;ont pas pu être lus.</translation>
    </message>
    <message>
        <source>%1 · a new run</source>
        <translation>%1 · un nouveau tronçon</translation>
    </message>
    <message>
        <source>a new site</source>
        <translation>un nouveau site</translation>
    </message>
    <message>
        <source>Register a site</source>
        <translation>Inscrire un site</translation>
    </message>
    <message>
        <source>Register the first site here, bring a register in from CSV files with kneerail import, or make the invented harbour with kneerail demo.</source>
        <translation>Inscrire ici le premier site, importer un registre de fichiers CSV avec kneerail import, ou créer le port inventé avec kneerail demo.</translation>
    </message>
</context>
<context>
    <name>SitesCells</name>
    <message>
        <source>Kept here</source>
        <translation>Enregistré ici</translation>
    </message>
    <message>
        <source>This tablet</source>
        <translation>Cette tablette</translation>
    </message>
    <message>
        <source>Register</source>
        <translation>Inscrire</translation>
    </message>
</context>
<context>
    <name>SitesModel</name>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message numerus="yes">
        <source>%Ln site(s)</source>
        <translation>
            <numerusform>%Ln site</numerusform>
            <numerusform>%Ln sites</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s)</source>
        <translation>
            <numerusform>%Ln poteau</numerusform>
            <numerusform>%Ln poteaux</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln entries</source>
        <translation>
            <numerusform>%Ln saisie</numerusform>
            <numerusform>%Ln saisies</numerusform>
        </translation>
    </message>
    <message>
        <source>Reckoning what comes due.</source>
        <translation>Calcul des échéances en cours.</translation>
    </message>
    <message>
        <source>%1, %2, %3 %4. %5</source>
        <translation>%1, %2, %3 %4. %5</translation>
    </message>
    <message>
        <source>Reckoning walls, set screws and grades.</source>
        <translation>Calcul des parois, vis de pression et notes en cours.</translation>
    </message>
</context>
<context>
    <name>SkipKeys</name>
    <message>
        <source>Locked</source>
        <translation>Fermé à clé</translation>
    </message>
    <message>
        <source>Water</source>
        <translation>Eau</translation>
    </message>
    <message>
        <source>Blocked</source>
        <translation>Encombré</translation>
    </message>
    <message>
        <source>Unsafe</source>
        <translation>Dangereux</translation>
    </message>
    <message>
        <source>No time</source>
        <translation>Pas le temps</translation>
    </message>
    <message>
        <source>Struck</source>
        <translation>Démonté</translation>
    </message>
    <message>
        <source>Other</source>
        <translation>Autre</translation>
    </message>
    <message>
        <source>Drag along the run line to the end of the stretch, then say why. It stays open and due.</source>
        <translation>Glisser le long de la ligne du tronçon jusqu&apos;au bout de la partie, puis dire pourquoi. Elle reste ouverte et à faire.</translation>
    </message>
    <message>
        <source>Back to the post</source>
        <translation>Retour au poteau</translation>
    </message>
</context>
<context>
    <name>SleeveProgress</name>
    <message>
        <source>%L1 of %L2 done</source>
        <translation>%L1 sur %L2 faits</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1 : %2</translation>
    </message>
</context>
<context>
    <name>Tablet</name>
    <message>
        <source>This tablet</source>
        <translation>Cette tablette</translation>
    </message>
    <message>
        <source>Kneerail</source>
        <translation>Kneerail</translation>
    </message>
</context>
<context>
    <name>TabletLooks</name>
    <message>
        <source>Language</source>
        <translation>Langue</translation>
    </message>
    <message>
        <source>The glass was measured with a card: drawings are to scale on it.</source>
        <translation>L&apos;écran a été mesuré avec une carte : les dessins y sont à l&apos;échelle.</translation>
    </message>
    <message>
        <source>Nobody has measured this glass: scales of drawings are about what they say.</source>
        <translation>Personne n&apos;a mesuré cet écran : les échelles des dessins ne sont qu&apos;approchées.</translation>
    </message>
    <message>
        <source>Measure the glass with a card</source>
        <translation>Mesurer l&apos;écran avec une carte</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Retour</translation>
    </message>
</context>
<context>
    <name>TapeItem</name>
    <message>
        <source>%1 m</source>
        <translation>%1 m</translation>
    </message>
</context>
<context>
    <name>TellSheet</name>
    <message>
        <source>the owner&apos;s office</source>
        <translation>bureau du propriétaire</translation>
    </message>
    <message>
        <source>police or rescue</source>
        <translation>police ou secours</translation>
    </message>
    <message>
        <source>staff at the site</source>
        <translation>personnel du site</translation>
    </message>
    <message>
        <source>%1 · nobody is told</source>
        <translation>%1 · signalé à personne</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Who was told? Touch the name when they have heard it: who and when are kept.</source>
        <translation>Qui est prévenu ? Toucher le nom quand c&apos;est entendu : qui et quand sont enregistrés.</translation>
    </message>
    <message>
        <source>This site&apos;s register names nobody to tell. Say which office was told.</source>
        <translation>Le registre de ce site ne nomme personne à prévenir. Dire quel service est prévenu.</translation>
    </message>
    <message>
        <source>Or an office, without a name:</source>
        <translation>Ou un service, sans nom :</translation>
    </message>
    <message>
        <source>To tell somebody holds nobody back. What cannot wait stays until a person ends it.</source>
        <translation>Prévenir ne retient personne. Ce qui ne peut attendre reste jusqu&apos;à clôture par une personne.</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Retour</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Annuler</translation>
    </message>
    <message>
        <source>Open the finding</source>
        <translation>Ouvrir le constat</translation>
    </message>
</context>
<context>
    <name>ThisTablet</name>
    <message>
        <source>A guard-rail holds people back from a fall.</source>
        <translation>Un garde-corps préserve les personnes d&apos;une chute.</translation>
    </message>
    <message>
        <source>Kneerail supports a competent person; it does not certify.</source>
        <translation>Kneerail assiste une personne compétente ; il ne certifie pas.</translation>
    </message>
    <message>
        <source>Projections are estimates with stated uncertainty; structural results are screening checks; loads, heights, torque values and intervals follow local codes, the fitting maker&apos;s instructions and a licensed engineer&apos;s judgement.</source>
        <translation>Les projections sont des estimations à incertitude déclarée ; les résultats structurels sont des contrôles de dépistage ; les charges, hauteurs, valeurs de couple et intervalles suivent les règlements locaux, les instructions du fabricant des raccords et le jugement d&apos;un ingénieur habilité.</translation>
    </message>
    <message>
        <source>Never wait for a projection to close off a rail that moves.</source>
        <translation>Ne jamais attendre une projection pour barrer un garde-corps qui bouge.</translation>
    </message>
    <message>
        <source>Torque values are the register&apos;s, set by the owner; the demo&apos;s are invented.</source>
        <translation>Les valeurs de couple sont celles du registre, fixées par le propriétaire ; celles de la démonstration sont inventées.</translation>
    </message>
    <message>
        <source>Kneerail %1, Apache License 2.0</source>
        <translation>Kneerail %1, Apache License 2.0</translation>
    </message>
    <message>
        <source>The register is in %1</source>
        <translation>Le registre est dans %1</translation>
    </message>
    <message>
        <source>What is entered is kept there at once.</source>
        <translation>Ce qui est saisi y est enregistré aussitôt.</translation>
    </message>
    <message>
        <source>It can only be read here: nothing that is entered is kept.</source>
        <translation>Il ne peut être que lu ici : rien de ce qui est saisi n&apos;est enregistré.</translation>
    </message>
</context>
<context>
    <name>TimeLeft</name>
    <message>
        <source>Time left</source>
        <translation>Durée restante</translation>
    </message>
    <message>
        <source>Time left, from %1</source>
        <translation>Durée restante, au %1</translation>
    </message>
</context>
<context>
    <name>TimeTape</name>
    <message>
        <source>%1 h</source>
        <translation>%1 h</translation>
    </message>
</context>
<context>
    <name>TitleCell</name>
    <message>
        <source>%1: %2</source>
        <translation>%1 : %2</translation>
    </message>
</context>
<context>
    <name>Tokens</name>
    <message>
        <source>A font is missing. Letters come from another one until the package %1 is installed.</source>
        <translation>Une police manque. Les lettres viennent d&apos;une autre tant que le paquet %1 n&apos;est pas installé.</translation>
    </message>
</context>
<context>
    <name>TorqueCheck</name>
    <message>
        <source>Wrench %1 set at %2 N·m</source>
        <translation>Clé %1 réglée à %2 N·m</translation>
    </message>
    <message>
        <source>Screw %1 of %2, register says %3 N·m</source>
        <translation>Vis %1 sur %2, le registre dit %3 N·m</translation>
    </message>
    <message>
        <source>no screw</source>
        <translation>pas de vis</translation>
    </message>
    <message>
        <source>seized</source>
        <translation>grippée</translation>
    </message>
    <message>
        <source>clicked at %1</source>
        <translation>déclic à %1</translation>
    </message>
    <message>
        <source>moved, under %1</source>
        <translation>a tourné, sous %1</translation>
    </message>
    <message>
        <source>moved at about %1</source>
        <translation>a tourné vers %1</translation>
    </message>
    <message>
        <source>last time: %1</source>
        <translation>dernière fois : %1</translation>
    </message>
    <message>
        <source>not checked before</source>
        <translation>pas encore vérifiée</translation>
    </message>
    <message>
        <source>Kept: %1</source>
        <translation>Enregistré : %1</translation>
    </message>
    <message>
        <source>Clicked at %1, did not move</source>
        <translation>Déclic à %1, n&apos;a pas tourné</translation>
    </message>
    <message>
        <source>held at least %1 N·m</source>
        <translation>a tenu au moins %1 N·m</translation>
    </message>
    <message>
        <source>then tight again at %1</source>
        <translation>puis resserrée à %1</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 sur %2</translation>
    </message>
    <message>
        <source>it moved</source>
        <translation>a tourné</translation>
    </message>
    <message>
        <source>moved at %1</source>
        <translation>a tourné à %1</translation>
    </message>
</context>
<context>
    <name>TorqueKeys</name>
    <message>
        <source>It is set</source>
        <translation>Elle est réglée</translation>
    </message>
    <message>
        <source>It moved. About where?</source>
        <translation>Elle a tourné. Vers combien ?</translation>
    </message>
    <message>
        <source>Seized</source>
        <translation>Grippée</translation>
    </message>
    <message>
        <source>No screw</source>
        <translation>Pas de vis</translation>
    </message>
</context>
<context>
    <name>TrendPainter</name>
    <message>
        <source>now</source>
        <translation>ce jour</translation>
    </message>
    <message>
        <source>history starts again</source>
        <translation>l&apos;historique recommence</translation>
    </message>
</context>
<context>
    <name>TrendSheet</name>
    <message>
        <source>Coating, µm</source>
        <translation>Revêtement, µm</translation>
    </message>
    <message>
        <source>hollow: something was entered since, reckoning again</source>
        <translation>creux : une saisie a été faite depuis, nouveau calcul</translation>
    </message>
    <message>
        <source>Coating of post %1, %2, along the years</source>
        <translation>Revêtement du poteau %1, %2, au fil des ans</translation>
    </message>
</context>
<context>
    <name>TrendWords</name>
    <message>
        <source>replaced? about %1</source>
        <translation>remplacé ? vers %1</translation>
    </message>
    <message>
        <source>touched up %1</source>
        <translation>retouché %1</translation>
    </message>
    <message>
        <source>re-galvanised %1</source>
        <translation>regalvanisé %1</translation>
    </message>
    <message>
        <source>re-erected %1, same part not sure</source>
        <translation>remonté %1, même pièce non sûre</translation>
    </message>
    <message>
        <source>replaced %1</source>
        <translation>remplacé %1</translation>
    </message>
    <message>
        <source>gauge %1 was off: put right, %2 µm</source>
        <translation>appareil %1 décalé : corrigé, %2 µm</translation>
    </message>
    <message>
        <source>zinc gone, %1 µm</source>
        <translation>zinc épuisé, %1 µm</translation>
    </message>
    <message>
        <source>first maintenance, %1 µm</source>
        <translation>premier entretien, %1 µm</translation>
    </message>
</context>
<context>
    <name>VisibleParts</name>
    <message>
        <source>%1, chosen to be measured</source>
        <translation>%1, choisi à mesurer</translation>
    </message>
</context>
<context>
    <name>VisitClose</name>
    <message>
        <source>routine visit</source>
        <translation>visite courante</translation>
    </message>
    <message>
        <source>detailed visit</source>
        <translation>visite détaillée</translation>
    </message>
    <message>
        <source>visit after an event</source>
        <translation>visite après événement</translation>
    </message>
    <message>
        <source>visit after work</source>
        <translation>visite après travaux</translation>
    </message>
    <message>
        <source>visit before opening</source>
        <translation>visite avant ouverture</translation>
    </message>
    <message>
        <source>strike</source>
        <translation>démontage</translation>
    </message>
    <message>
        <source>re-erecting</source>
        <translation>remontage</translation>
    </message>
    <message>
        <source>locked</source>
        <translation>fermé à clé</translation>
    </message>
    <message>
        <source>water</source>
        <translation>eau</translation>
    </message>
    <message>
        <source>blocked</source>
        <translation>encombré</translation>
    </message>
    <message>
        <source>unsafe</source>
        <translation>dangereux</translation>
    </message>
    <message>
        <source>no time</source>
        <translation>pas le temps</translation>
    </message>
    <message>
        <source>struck</source>
        <translation>démonté</translation>
    </message>
    <message>
        <source>another reason</source>
        <translation>autre raison</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1, not reached: %2</source>
        <translation>%1, non atteint : %2</translation>
    </message>
    <message>
        <source>, </source>
        <translation>, </translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 à %2</translation>
    </message>
    <message>
        <source>Close visit %1</source>
        <translation>Clore la visite %1</translation>
    </message>
    <message>
        <source>Close the visit</source>
        <translation>Clore la visite</translation>
    </message>
    <message>
        <source>Visit %1 · %2 · %3</source>
        <translation>Visite %1 · %2 · %3</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message numerus="yes">
        <source>of %Ln post(s) seen</source>
        <translation>
            <numerusform>vus sur %Ln poteau</numerusform>
            <numerusform>vus sur %Ln poteaux</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>coating readings, %Ln wall(s)</source>
        <translation>
            <numerusform>mesures de revêtement, %Ln paroi</numerusform>
            <numerusform>mesures de revêtement, %Ln parois</numerusform>
        </translation>
    </message>
    <message>
        <source>coating readings</source>
        <translation>mesures de revêtement</translation>
    </message>
    <message>
        <source>screws checked</source>
        <translation>vis vérifiées</translation>
    </message>
    <message numerus="yes">
        <source>findings, %Ln made safe</source>
        <translation>
            <numerusform>constats, %Ln mis en sécurité</numerusform>
            <numerusform>constats, %Ln mis en sécurité</numerusform>
        </translation>
    </message>
    <message>
        <source>findings</source>
        <translation>constats</translation>
    </message>
    <message>
        <source>Nothing is left open.</source>
        <translation>Rien ne reste ouvert.</translation>
    </message>
    <message>
        <source>%1 post %2</source>
        <translation>%1 poteau %2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1: not made safe.</source>
        <translation>%1 : non mis en sécurité.</translation>
    </message>
    <message>
        <source>%1: not made safe. Nobody told yet.</source>
        <translation>%1 : non mis en sécurité. Pas encore signalé.</translation>
    </message>
    <message>
        <source>%1: made safe. Nobody told yet.</source>
        <translation>%1 : mis en sécurité. Pas encore signalé.</translation>
    </message>
    <message numerus="yes">
        <source>%n more finding(s) that cannot wait.</source>
        <translation>
            <numerusform>%n autre constat qui ne peut attendre.</numerusform>
            <numerusform>%n autres constats qui ne peuvent attendre.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n closure(s) should have been looked at by now.</source>
        <translation>
            <numerusform>%n barrage aurait déjà dû être regardé.</numerusform>
            <numerusform>%n barrages auraient déjà dû être regardés.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) without a look and without a reason, first %1 on %2.</source>
        <translation>
            <numerusform>%Ln poteau sans regard et sans raison, premier %1 sur %2.</numerusform>
            <numerusform>%Ln poteaux sans regard et sans raison, premier %1 sur %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln post(s) not reached: reasons given. They stay open and due.</source>
        <translation>
            <numerusform>%Ln poteau non atteint : raison donnée. Il reste ouvert et à faire.</numerusform>
            <numerusform>%Ln poteaux non atteints : raisons données. Ils restent ouverts et à faire.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln part(s) had no fresh look for two visits or more.</source>
        <translation>
            <numerusform>%Ln pièce sans nouveau regard depuis deux visites ou plus.</numerusform>
            <numerusform>%Ln pièces sans nouveau regard depuis deux visites ou plus.</numerusform>
        </translation>
    </message>
    <message>
        <source>Posts %1 by eye: %2 s each.</source>
        <translation>Poteaux %1 à l&apos;œil : %2 s chacun.</translation>
    </message>
    <message numerus="yes">
        <source>Gauge %1 was never zeroed: %Ln reading set(s) have a wider error.</source>
        <translation>
            <numerusform>Appareil %1 jamais mis à zéro : %Ln série de mesures a une erreur élargie.</numerusform>
            <numerusform>Appareil %1 jamais mis à zéro : %Ln séries de mesures ont une erreur élargie.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Gauge %1, zero %2 h %3 min old: %Ln reading set(s) have a wider error.</source>
        <translation>
            <numerusform>Appareil %1, zéro vieux de %2 h %3 min : %Ln série de mesures a une erreur élargie.</numerusform>
            <numerusform>Appareil %1, zéro vieux de %2 h %3 min : %Ln séries de mesures ont une erreur élargie.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%Ln entries</source>
        <translation>
            <numerusform>%Ln saisie</numerusform>
            <numerusform>%Ln saisies</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 and %2</source>
        <translation>%1 et %2</translation>
    </message>
    <message numerus="yes">
        <source>%Ln photograph(s)</source>
        <translation>
            <numerusform>%Ln photographie</numerusform>
            <numerusform>%Ln photographies</numerusform>
        </translation>
    </message>
    <message>
        <source>Fixes %1 under one digest. Later changes are added as corrections, with both values shown. Nothing is taken away.</source>
        <translation>Fige %1 sous une seule empreinte. Les changements ultérieurs s&apos;ajoutent comme corrections, les deux valeurs affichées. Rien n&apos;est retiré.</translation>
    </message>
    <message>
        <source>%1 %2 · %3 %4</source>
        <translation>%1 %2 · %3 %4</translation>
    </message>
    <message>
        <source>%1 · sealed %2</source>
        <translation>%1 · scellé %2</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
</context>
<context>
    <name>Walk</name>
    <message>
        <source>%1 · %2 · %3</source>
        <translation>%1 · %2 · %3</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>No rail is drawn yet. Registers come from a file: kneerail import.</source>
        <translation>Aucun garde-corps n&apos;est encore dessiné. Les registres viennent d&apos;un fichier : kneerail import.</translation>
    </message>
</context>
<context>
    <name>WalkCells</name>
    <message>
        <source>%1 · %2 walks</source>
        <translation>%1 · %2 en tournée</translation>
    </message>
    <message>
        <source>Touch to take it</source>
        <translation>Toucher pour prendre</translation>
    </message>
    <message>
        <source>It was nobody&apos;s</source>
        <translation>À aucune pièce</translation>
    </message>
    <message>
        <source>throw it away</source>
        <translation>rejeter</translation>
    </message>
</context>
<context>
    <name>WalkDrawing</name>
    <message>
        <source>Redo</source>
        <translation>Rétablir</translation>
    </message>
    <message>
        <source>%1 thrown away</source>
        <translation>%1 rejeté</translation>
    </message>
    <message>
        <source>%1 taken back</source>
        <translation>%1 annulé</translation>
    </message>
    <message>
        <source>both stay in the log</source>
        <translation>les deux restent au journal</translation>
    </message>
</context>
<context>
    <name>WalkModel</name>
    <message>
        <source>That is kept as not in order. Zero it again, or take another gauge.</source>
        <translation>Enregistré comme non conforme. Refaire le zéro, ou prendre un autre appareil.</translation>
    </message>
    <message>
        <source>Read only: %1 is not kept.</source>
        <translation>Lecture seule : %1 n&apos;est pas enregistré.</translation>
    </message>
    <message>
        <source>%1 µm cannot be kept: a coating is 0 to 2,000 µm.</source>
        <translation>%1 µm ne peut être enregistré : un revêtement va de 0 à 2 000 µm.</translation>
    </message>
    <message>
        <source>%1 µm came while no slot waited. It waits at the top until it is touched.</source>
        <translation>%1 µm est arrivé sans case en attente. La valeur attend en haut jusqu&apos;à ce qu&apos;on la touche.</translation>
    </message>
    <message>
        <source>First touch the part it was read on.</source>
        <translation>Toucher d&apos;abord la pièce mesurée.</translation>
    </message>
    <message>
        <source>%1 µm</source>
        <translation>%1 µm</translation>
    </message>
    <message>
        <source>Not kept: %1 The number waits here.</source>
        <translation>Non enregistré : %1 La valeur attend ici.</translation>
    </message>
    <message>
        <source>paint whole</source>
        <translation>peinture entière</translation>
    </message>
    <message>
        <source>no pits</source>
        <translation>sans piqûres</translation>
    </message>
    <message>
        <source>bright</source>
        <translation>brillant</translation>
    </message>
    <message>
        <source>coating whole</source>
        <translation>revêtement entier</translation>
    </message>
    <message>
        <source>chalking, no red rust</source>
        <translation>farinage, sans rouille rouge</translation>
    </message>
    <message>
        <source>white bloom, no pits</source>
        <translation>voile blanc, sans piqûres</translation>
    </message>
    <message>
        <source>tea stain</source>
        <translation>taches brunes</translation>
    </message>
    <message>
        <source>white bloom, no red rust</source>
        <translation>voile blanc, sans rouille rouge</translation>
    </message>
    <message>
        <source>or paint broken</source>
        <translation>ou peinture rompue</translation>
    </message>
    <message>
        <source>pits you can feel</source>
        <translation>piqûres sensibles au doigt</translation>
    </message>
    <message>
        <source>pits</source>
        <translation>piqûres</translation>
    </message>
    <message>
        <source>or coating under half</source>
        <translation>ou moins de la moitié du revêtement</translation>
    </message>
    <message>
        <source>section loss, loose, seized</source>
        <translation>section perdue, desserré, grippé</translation>
    </message>
    <message>
        <source>split, holed, missing, moves</source>
        <translation>fendu, percé, manquant, bouge</translation>
    </message>
    <message>
        <source>grade %1</source>
        <translation>note %1</translation>
    </message>
    <message>
        <source>Read only</source>
        <translation>Lecture seule</translation>
    </message>
    <message>
        <source>Choose a post.</source>
        <translation>Choisir un poteau.</translation>
    </message>
    <message>
        <source>Nothing stands here.</source>
        <translation>Rien n&apos;est debout ici.</translation>
    </message>
    <message>
        <source>Look again: not graded before</source>
        <translation>Regarder encore : pas encore noté</translation>
    </message>
    <message>
        <source>Look again: grade %1 last time</source>
        <translation>Regarder encore : note %1 la dernière fois</translation>
    </message>
    <message numerus="yes">
        <source>Look again: as last time %n time(s) running</source>
        <translation>
            <numerusform>Regarder encore : comme la dernière fois %n fois de suite</numerusform>
            <numerusform>Regarder encore : comme la dernière fois %n fois de suite</numerusform>
        </translation>
    </message>
    <message>
        <source>Look again: %1 is open</source>
        <translation>Regarder encore : %1 est ouvert</translation>
    </message>
    <message>
        <source>Every part has its grade.</source>
        <translation>Chaque pièce a sa note.</translation>
    </message>
    <message>
        <source>post %1</source>
        <translation>poteau %1</translation>
    </message>
    <message>
        <source>Nothing was skipped: every post there is seen or struck.</source>
        <translation>Rien n&apos;a été passé : chaque poteau y est vu ou démonté.</translation>
    </message>
    <message numerus="yes">
        <source>%n post(s) skipped</source>
        <translation>
            <numerusform>%n poteau passé</numerusform>
            <numerusform>%n poteaux passés</numerusform>
        </translation>
    </message>
    <message>
        <source>Read only: %1 What was typed stays on this screen, and nowhere else.</source>
        <translation>Lecture seule : %1 Ce qui a été tapé reste sur cet écran, et nulle part ailleurs.</translation>
    </message>
    <message>
        <source>last visit, %1</source>
        <translation>dernière visite, %1</translation>
    </message>
    <message>
        <source>thinnest %1 µm</source>
        <translation>minimum %1 µm</translation>
    </message>
    <message>
        <source>%1 N·m</source>
        <translation>%1 N·m</translation>
    </message>
    <message>
        <source>%1 · %2</source>
        <translation>%1 · %2</translation>
    </message>
    <message>
        <source>Post %1</source>
        <translation>Poteau %1</translation>
    </message>
    <message>
        <source>Post %1 · %2</source>
        <translation>Poteau %1 · %2</translation>
    </message>
    <message>
        <source>nothing stands here</source>
        <translation>rien n&apos;est debout ici</translation>
    </message>
    <message numerus="yes">
        <source>%n part(s)</source>
        <translation>
            <numerusform>%n pièce</numerusform>
            <numerusform>%n pièces</numerusform>
        </translation>
    </message>
    <message>
        <source>%1, not graded before</source>
        <translation>%1, sans note antérieure</translation>
    </message>
    <message>
        <source>%1, not all graded before</source>
        <translation>%1, notes antérieures incomplètes</translation>
    </message>
    <message>
        <source>%1, grade %2 among them last time</source>
        <translation>%1, dont note %2 la dernière fois</translation>
    </message>
    <message>
        <source>%1, all grade 1 or 2 last time</source>
        <translation>%1, que des notes 1 ou 2 la dernière fois</translation>
    </message>
    <message>
        <source>%1 seen · %2 skipped · %3 open</source>
        <translation>vus %1 · passés %2 · ouverts %3</translation>
    </message>
    <message>
        <source>bay %1 to %2 firm too</source>
        <translation>travée %1 à %2 ferme aussi</translation>
    </message>
    <message>
        <source>on to %1</source>
        <translation>puis %1</translation>
    </message>
    <message>
        <source>Kept, but not where you are</source>
        <translation>Enregistré, sauf votre position</translation>
    </message>
    <message>
        <source>Saved %1</source>
        <translation>Enregistré %1</translation>
    </message>
    <message>
        <source>Kept here</source>
        <translation>Enregistré ici</translation>
    </message>
    <message numerus="yes">
        <source>%n entries</source>
        <translation>
            <numerusform>%n saisie</numerusform>
            <numerusform>%n saisies</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 µm waiting</source>
        <translation>%1 µm en attente</translation>
    </message>
    <message numerus="yes">
        <source>%1 µm and %n more waiting</source>
        <translation>
            <numerusform>%1 µm et %n autre en attente</numerusform>
            <numerusform>%1 µm et %n autres en attente</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n entry that was being typed is kept.</source>
        <translation>
            <numerusform>%n saisie en cours de frappe est enregistrée.</numerusform>
            <numerusform>%n saisies en cours de frappe sont enregistrées.</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 · %2 chosen to measure</source>
        <translation>%1 · à mesurer %2</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 à %2</translation>
    </message>
</context>
<context>
    <name>WalkPad</name>
    <message>
        <source>Post %1</source>
        <translation>Poteau %1</translation>
    </message>
    <message>
        <source>Posts %1 to %2</source>
        <translation>Poteaux %1 à %2</translation>
    </message>
    <message>
        <source>Next screw</source>
        <translation>Vis suivante</translation>
    </message>
    <message>
        <source>Next part</source>
        <translation>Pièce suivante</translation>
    </message>
</context>
<context>
    <name>WalkPen</name>
    <message>
        <source>Something is not kept yet. Try again, then seal. Nothing was sealed.</source>
        <translation>Il reste une saisie non enregistrée. Réessayer, puis sceller. Rien n&apos;a été scellé.</translation>
    </message>
    <message>
        <source>Nothing was entered in this visit. Nothing was sealed.</source>
        <translation>Rien n&apos;a été saisi à cette visite. Rien n&apos;a été scellé.</translation>
    </message>
    <message>
        <source>taken back</source>
        <translation>annulé</translation>
    </message>
    <message>
        <source>Not kept: %1 The number stays here. Try again.</source>
        <translation>Non enregistré : %1 La valeur reste ici. Réessayer.</translation>
    </message>
</context>
<context>
    <name>WallCheck</name>
    <message>
        <source>Wall at 12 o&apos;clock</source>
        <translation>Paroi à 12 h</translation>
    </message>
    <message>
        <source>Wall at %1 o&apos;clock</source>
        <translation>Paroi à %1 h</translation>
    </message>
    <message>
        <source>at the foot, inside the hollow</source>
        <translation>au pied, dans le creux</translation>
    </message>
    <message>
        <source>%1 mm above its base</source>
        <translation>%1 mm au-dessus de sa base</translation>
    </message>
    <message>
        <source>in the middle of the bay</source>
        <translation>au milieu de la travée</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>new %1 mm</source>
        <translation>neuf %1 mm</translation>
    </message>
    <message>
        <source>last time %1</source>
        <translation>dernière fois %1</translation>
    </message>
    <message>
        <source>not read before</source>
        <translation>pas encore mesuré</translation>
    </message>
    <message>
        <source>owner&apos;s limit %1</source>
        <translation>limite du propriétaire %1</translation>
    </message>
    <message>
        <source> · </source>
        <translation> · </translation>
    </message>
    <message>
        <source>Far from its wall when new. Read it once more?</source>
        <translation>Loin de la paroi neuve. Mesurer encore ?</translation>
    </message>
    <message>
        <source>Under the owner&apos;s limit of %1: keep people off it until it is looked at.</source>
        <translation>Sous la limite du propriétaire de %1 : en tenir les personnes éloignées jusqu&apos;à examen.</translation>
    </message>
    <message>
        <source>%1 mm</source>
        <translation>%1 mm</translation>
    </message>
</context>
<context>
    <name>WallSlot</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>vide</translation>
    </message>
    <message>
        <source>%1, last visit %2</source>
        <translation>%1, dernière visite %2</translation>
    </message>
    <message>
        <source>not kept</source>
        <translation>non enregistré</translation>
    </message>
</context>
<context>
    <name>Water</name>
    <message>
        <source>ice mark %1</source>
        <translation>repère de glace %1</translation>
    </message>
    <message>
        <source>flood mark %1</source>
        <translation>repère de crue %1</translation>
    </message>
    <message>
        <source>%1, %2 m under the deck</source>
        <translation>%1, à %2 m sous le platelage</translation>
    </message>
    <message>
        <source>%1, %2 m above the deck</source>
        <translation>%1, à %2 m au-dessus du platelage</translation>
    </message>
</context>
</TS>
