package org.tallywright.web;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.Map;
import org.springframework.context.support.ResourceBundleMessageSource;
import org.springframework.stereotype.Controller;
import org.springframework.test.web.servlet.setup.MockMvcBuilders;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.spring6.view.ThymeleafViewResolver;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;

/** Renders templates as the server would, without the server. */
final class LookPages {
    private LookPages() {}

    static String render(String template, Map<String, Object> model) {
        try {
            return MockMvcBuilders.standaloneSetup(new Pages(model))
                    .setViewResolvers(views())
                    .build()
                    .perform(get("/look/" + template))
                    .andReturn()
                    .getResponse()
                    .getContentAsString();
        } catch (Exception failed) {
            throw new IllegalStateException(template, failed);
        }
    }

    private static ThymeleafViewResolver views() {
        var templates = new ClassLoaderTemplateResolver();
        templates.setPrefix("templates/");
        templates.setSuffix(".html");
        templates.setCharacterEncoding("UTF-8");
        var messages = new ResourceBundleMessageSource();
        messages.setBasename("messages");
        messages.setDefaultEncoding("UTF-8");
        messages.setFallbackToSystemLocale(false);
        var engine = new SpringTemplateEngine();
        engine.setTemplateResolver(templates);
        engine.setMessageSource(messages);
        engine.setTemplateEngineMessageSource(messages);
        var views = new ThymeleafViewResolver();
        views.setTemplateEngine(engine);
        views.setCharacterEncoding("UTF-8");
        return views;
    }

    @Controller
    static final class Pages {
        private final Map<String, Object> model;

        Pages(Map<String, Object> model) {
            this.model = model;
        }

        @GetMapping("/look/{template}")
        String page(@PathVariable("template") String template, Model page) {
            page.addAllAttributes(model);
            return "look/" + template;
        }
    }
}
