"""Small words of languages in Latin script: by them a sentence is known, whatever it speaks of."""

_LISTS = {
    "da": "by og at med ikke på af til fra den det en et for ind ud før efter begge eller er som der du "
    "skal må",
    "de": "der die das und nicht mit ist den dem ein eine einen auf von zu für sich auch dann bis vor nach "
    "oder im am zum zur bei beide wenn sind wird erst keine wieder in an es sie aus",
    "en": "the and with your off then until before from you this that when into both have been must out of "
    "to is not it they are if at by on in for as no or a an be only do",
    "es": "el los las y con una del por para que se su no antes después hasta luego ambas sin en la de un "
    "es al lo si como más o a nada nunca esté está son sus le",
    "fi": "ja ei on se että kun niin myös tai ennen jälkeen molemmat kunnes sitten ole älä",
    "fr": "le les et avec une du dans pour sur pas ne des puis avant après jusqu ou en la de un est aux au "
    "ce que qui se sa son ses si sans il elle on à a y par plus rien sont cela ils elles tout toute "
    "ni dès chaque",
    "id": "dan yang di ke dari untuk dengan pada tidak ini itu sebelum sesudah setelah sampai kedua lalu "
    "jangan",
    "it": "il lo gli e con una del della per che non dopo prima fino poi sul nel le la di un è dei delle "
    "alla si in da i al ai se o a più sono entrambe senza mai",
    "nl": "of de het een en met niet van voor op aan uit dan tot bij ook naar daarna eerst is te in zijn "
    "beide als door om er je of geen die dat",
    "pl": "i z ze się na do nie przed po jest oraz potem aż lub oba obie od dla przez w o to są jeśli",
    "pt": "for do no as o os as e com uma do da em para não antes depois até por que se um na no dos das "
    "ambas então a de ao à é são ou sem mais nunca seu sua",
    "ro": "și cu la de pe în nu apoi până din după înainte sau este un o se care ambele a al ale sunt dacă",
    "so": "iyo ka ku waa in oo aan laga kadib kahor ilaa labada",
    "sv": "is by för och att med inte på av till från den det en ett för sedan innan efter båda eller är "
    "som i du ska om",
    "sw": "na ya wa kwa za la cha vya katika kwenye kisha baada kabla hadi mikono yote ni si usi au kila "
    "mbili una ana huu hii hiki hilo hizi kama tu pia bado nini juu chini ndani nje yake yako",
    "tr": "ve ile bir için sonra önce kadar değil bu her iki da de veya ya",
    "vi": "to và của cho với không khi sau trước đến rồi cả hai các được vào ra",
}  # fmt: skip
"""From memory, none from a list of somebody else."""

SMALL_WORDS = {language: frozenset(listed.split()) for language, listed in _LISTS.items()}
"""Small words by language, in small letters."""
